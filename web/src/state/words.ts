/** A word of the page and what it means. */
export interface Entry {
  word: string
  meaning: string
}

/** The page's own words, in the order they are met. */
export const words: readonly Entry[] = [
  { word: 'sheet', meaning: 'One plan for a season: titled chapters of lines and tables, in one file that is yours.' },
  { word: 'line', meaning: 'One named quantity with its unit. It is a number, a guess, records, a choice or a formula.' },
  { word: 'guess', meaning: 'A number you are not sure of, as three: low, likely and high. In 1 season of 10 it is lower than the low, in 1 of 10 higher than the high; the likely has as many seasons above as below.' },
  { word: 'records', meaning: 'A line’s own past values. Each season draws one of them.' },
  { word: 'choice', meaning: 'A line that is one of a few named things: the fuel, the filter.' },
  { word: 'formula', meaning: 'How a line is worked out from others. Units are minded: gallons are not added to pounds.' },
  { word: 'table', meaning: 'Rows of like things (fuels, jars, tasks, gear), each column worked for every row.' },
  { word: 'scenario', meaning: 'A sheet taken from another with a few changes. All it does not change follows the sheet it is taken from.' },
  { word: 'season', meaning: 'One possible season: every guess drawn once, and everything worked from them.' },
  { word: 'range', meaning: '8 seasons in 10 fall between its ends; the middle has as many seasons above as below.' },
  { word: 'middle', meaning: 'The value with as many seasons above as below. It need not be the value at the likely numbers.' },
  { word: 'at the likely numbers', meaning: 'What comes out when every guess is at its likely number. A guess that leans to one side makes this differ from the middle.' },
  { word: 'goal', meaning: 'What a line should come to; it is told in how many seasons of 10 it does.' },
  { word: 'ahead', meaning: 'Doing better, as the sheet says what is better: more syrup, fewer hours.' },
  { word: 'movers', meaning: 'The guesses that move an outcome most, in order. “By itself” is the part of the spread a guess makes alone; “all it has a hand in” counts also what it does only together with others.' },
  { word: 'swing', meaning: 'How far an outcome goes as one guess alone goes from its low to its high.' },
  { word: 'worth knowing', meaning: 'What it would be worth, for one season, to know a guess before choosing between two plans. Nothing, when it would not change the choice.' },
  { word: 'where the answer turns', meaning: 'The value of a number from which on the other plan is better.' },
  { word: 'lay in', meaning: 'What to gather or buy beforehand, so that it lasts in, say, 9 seasons of 10.' },
  { word: 'ladder', meaning: 'The prices of the sizes by volume. Small jars are dearer by the ounce than large ones; where one is not, it is marked.' },
  { word: 'caution', meaning: 'Something that can burn, poison or blow up, said beside the line it belongs to, with its source.' },
]

/** The entries in which every word that is sought stands somewhere; all when nothing is. Case and accents do not count. */
export function matching<T>(entries: readonly T[], sought: string, texts: (entry: T) => readonly string[]): T[] {
  const parts = plain(sought).split(/\s+/).filter((part) => part !== '')
  return entries.filter((entry) => {
    const text = plain(texts(entry).join(' '))
    return parts.every((part) => text.includes(part))
  })
}

function plain(text: string): string {
  return text.normalize('NFKD').replaceAll(/\p{M}/gu, '').toLowerCase()
}
