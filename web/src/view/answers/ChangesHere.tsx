import { type Comparison, list } from '../../door/answers.ts'
import type { Files } from '../../door/protocol.ts'
import type { OpenSheet } from '../../state/app.ts'
import { useApp } from '../context.ts'
import { Answered } from './Answered.tsx'
import { DataTable } from './DataTable.tsx'
import { useAsk } from './useAsk.ts'

interface Props {
  sheet: OpenSheet
  files: Files | undefined
}

/** What a scenario says otherwise than the sheet it is taken from, with a way to take each back. */
export function ChangesHere({ sheet, files }: Props) {
  const app = useApp()
  const from = sheet.view.from ?? ''
  const asked = useAsk<Comparison>('compare', files === undefined ? undefined : { with: [from], files })
  return (
    <section class="changes-here" aria-labelledby="changes-here">
      <h3 id="changes-here">What this scenario says otherwise</h3>
      <Answered asked={asked} waiting="The changes are">
        {({ scenarios }) => {
          const changes = list(scenarios[1]?.changes)
          if (changes.length === 0) return <p>Nothing yet. Change a line on its sheet, and it stands here.</p>
          const rows = changes.map(({ about, label, was, is }) => ({
            key: about || label,
            cells: [
              label,
              // The comparison is told from this scenario, so what the other "is" is what stood before.
              is,
              was,
              about !== '' && (
                <button type="button" aria-label={`Take back the change of ${label}`} onClick={() => app.edit({ about, set: {}, restore: true })}>
                  Take back
                </button>
              ),
            ],
          }))
          return <DataTable quiet caption="What this scenario says otherwise" head={['What', `In “${scenarios[1]?.title ?? from}”`, 'Here', 'Change']} rows={rows} />
        }}
      </Answered>
    </section>
  )
}
