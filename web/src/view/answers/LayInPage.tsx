import { useState } from 'preact/hooks'
import { list } from '../../door/answers.ts'
import type { LayInItem, LayInList } from '../../door/prices.ts'
import type { OpenSheet } from '../../state/app.ts'
import '../../style/answers.css'
import { Diagnosis } from '../Diagnosis.tsx'
import { Answered } from './Answered.tsx'
import { useAsk } from './useAsk.ts'
import { useTicks } from './useTicks.ts'

const chances = [
  { chance: '1/2', label: '5 seasons of 10' },
  { chance: '4/5', label: '8 seasons of 10' },
  { chance: '9/10', label: '9 seasons of 10' },
  { chance: '19/20', label: '19 seasons of 20' },
] as const

/** What to gather or buy before the season, as a list to tick and print. */
export function LayInPage({ sheet }: { sheet: OpenSheet }) {
  const [chance, setChance] = useState('9/10')
  const asked = useAsk<LayInList>('layin', { chance })
  return (
    <section class="answer-page lay-in" aria-labelledby="page-title">
      <h2 id="page-title">To lay in before the season</h2>
      <label class="pick">
        <span>So that each thing lasts in</span>
        <select class="choice" value={chance} onChange={(event) => setChance(event.currentTarget.value)}>
          {chances.map((one) => (
            <option key={one.chance} value={one.chance}>
              {one.label}
            </option>
          ))}
        </select>
      </label>
      <Answered asked={asked} waiting="The list is">
        {(answer) => <TheList name={sheet.name} answer={answer} />}
      </Answered>
    </section>
  )
}

function TheList({ name, answer }: { name: string; answer: LayInList }) {
  const ticks = useTicks(name)
  const groups = list(answer.groups)
  return (
    <>
      <p class="told">{answer.paragraph}</p>
      {groups.length > 0 && (
        <p class="print-this">
          <button type="button" onClick={() => print()}>
            Print this list
          </button>
        </p>
      )}
      {groups.map(({ chapter, items }) => (
        <section key={chapter} class="lay-in-group">
          <h3>{chapter}</h3>
          <ul>
            {list(items).map((item) => (
              <Item key={item.id} item={item} ticked={ticks.has(item.id)} onTick={() => ticks.turn(item.id)} />
            ))}
          </ul>
        </section>
      ))}
      {answer.total !== null && (
        <p class="lay-in-total">
          All that has a price: <strong>{answer.total.shown}</strong>
          {answer.total.range && ` (${answer.total.range})`}
        </p>
      )}
      {list(answer.warnings).map((found, i) => (
        <Diagnosis key={i} found={found} />
      ))}
    </>
  )
}

interface ItemProps {
  item: LayInItem
  ticked: boolean
  onTick: () => void
}

function Item({ item: { id, label, note, buy, cost, shown }, ticked, onTick }: ItemProps) {
  return (
    <li data-line={id} class={ticked ? 'ticked' : ''}>
      <label>
        <input type="checkbox" checked={ticked} onChange={onTick} />
        <span class="lay-in-buy">{buy === 0 ? 'enough' : shown.buy}</span> <span class="line-label">{label}</span>
      </label>
      <p class="lay-in-why">
        {shown.packs && `${shown.packs}. `}
        To last: {shown.need}. The middle season takes {shown.middle}; on hand: {shown.on_hand}. Short with what is on hand in {shown.short_now}
        {buy === 0 ? '' : `, once it is bought in ${shown.short_then}`}.
        {cost !== null && (
          <>
            {' '}
            Comes to <strong>{cost.shown}</strong>
            {cost.range && ` (${cost.range})`}.
          </>
        )}
      </p>
      {note && <p class="line-note">{note}</p>}
    </li>
  )
}
