export { CATALOGUE, calculate, findItem } from './catalogue/catalogue.ts'
