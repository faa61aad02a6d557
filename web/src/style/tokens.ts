import { DAY_SHEET_CSS, tokensCss } from '@swardwright/present'

/** Puts the colours and sizes that pages, drawings and day sheets share on the document, without an inline style that a strict policy would refuse. */
export const adoptTokens = (): void => {
  const adopted = [tokensCss(), DAY_SHEET_CSS].map((css) => {
    const sheet = new CSSStyleSheet()
    sheet.replaceSync(css)
    return sheet
  })
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, ...adopted]
}
