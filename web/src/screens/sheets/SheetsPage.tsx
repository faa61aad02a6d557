export const SheetsPage = () => null
