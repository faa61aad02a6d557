/** A figure as a report tells it: rounded to so many decimals. */
export const rounded = (value: number, digits: number): number => Number(value.toFixed(digits))
