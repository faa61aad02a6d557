import { tokensCss } from '@swardwright/present'

/** Puts the colours and sizes that pages and drawings share on the document, without an inline style that a strict policy would refuse. */
export const adoptTokens = (): void => {
  const sheet = new CSSStyleSheet()
  sheet.replaceSync(tokensCss())
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet]
}
