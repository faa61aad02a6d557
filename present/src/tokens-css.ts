import { FACE } from './drawing.ts'
import { STEP_PX, TARGET_PX, TEXT_PX, TOKEN_NAMES, TOKENS, type Twin } from './tokens.ts'

const colours = (twin: Twin): string => TOKEN_NAMES.map((name) => `--${name}:${TOKENS[name][twin]};`).join('')

const sizes = [
  `--face:${FACE};`,
  `--step:${STEP_PX}px;`,
  ...Object.entries(TEXT_PX).map(([name, px]) => `--text-${name}:${px / 16}rem;`),
  ...Object.entries(TARGET_PX).map(([name, px]) => `--target-${name}:${px}px;`),
].join('')

/**
 * The style sheet of custom properties that pages and drawings share. The twin follows the device's wish;
 * `data-twin="day"` or `"night"` on the root element fixes it; paper is always black on white.
 * The last rule names the attribute both ways so that it weighs as much as the rules before it.
 */
export const tokensCss = (): string =>
  [
    `:root{color-scheme:light;${sizes}${colours('day')}}`,
    `@media (prefers-color-scheme:dark){:root:not([data-twin='day']){color-scheme:dark;${colours('night')}}}`,
    `:root[data-twin='night']{color-scheme:dark;${colours('night')}}`,
    `@media print{:root[data-twin],:root:not([data-twin]){color-scheme:light;${colours('print')}}}`,
  ].join('\n')
