/** The pages of an open sheet, by the last part of their address. */
export const pageNames = ['sheet', 'side-by-side', 'movers', 'prices', 'lay-in', 'words'] as const

export type PageName = (typeof pageNames)[number]

/** What each page is called where it is linked to. */
export const pageTitles: Readonly<Record<PageName, string>> = {
  sheet: 'The sheet',
  'side-by-side': 'Side by side',
  movers: 'What moves it',
  prices: 'Prices',
  'lay-in': 'To lay in',
  words: 'Words and functions',
}
