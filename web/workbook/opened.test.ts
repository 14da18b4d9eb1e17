// Each workbook opens in readers that are not ours, without complaint, and says
// the same in both.
import { read, utils } from '@e965/xlsx'
import { unzipSync } from 'fflate'
import readSheets from 'read-excel-file/node'
import { describe, expect, it } from 'vitest'
import { handedOver } from './answers.ts'

describe.each(handedOver())('$name', ({ bytes }) => {
  it('says the same in two readers', async () => {
    const book = read(bytes)
    const sheets = await readSheets(Buffer.from(bytes))
    expect(sheets.map((s) => s.sheet)).toEqual(book.SheetNames)
    for (const { sheet, data } of sheets) {
      const rows = utils.sheet_to_json<unknown[]>(book.Sheets[sheet]!, { header: 1, defval: null, blankrows: true })
      let seen = 0
      data.forEach((row, r) =>
        row.forEach((value, c) => {
          if (value === null) return
          seen++
          expect(rows[r]?.[c], `${sheet} row ${r + 1} column ${c + 1}`).toEqual(value)
        }),
      )
      expect(seen, sheet).toBeGreaterThan(3)
    }
  })

  it('holds nothing that runs or reaches outside', () => {
    const parts = unzipSync(bytes)
    for (const [name, part] of Object.entries(parts)) {
      expect(name).not.toMatch(/vba|macro|externalLink|activeX|embeddings|connections|webPublish/i)
      if (name.endsWith('.rels')) expect(new TextDecoder().decode(part)).not.toMatch(/TargetMode="External"/i)
    }
  })
})
