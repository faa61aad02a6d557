import { calculationErrorWords, decimal } from '@swardwright/present'
import { useEffect, useRef } from 'preact/hooks'
import type { NumberOrigin, UsedField } from '../compute/origin.ts'
import { compute } from '../state/compute.ts'
import { latest } from '../state/latest.ts'
import { askedFigure } from '../state/where-from.ts'
import { Note } from './Note.tsx'
import { PANEL_WORDS } from './panel-words.ts'

const origin = latest<NumberOrigin | null>()

/** Six digits: enough to compare with any other surface, and readable. */
const valueWords = ({ value, unit }: UsedField): string => {
  const figure =
    typeof value === 'number'
      ? decimal(Number(value.toPrecision(6)), 6)
      : typeof value === 'boolean'
        ? value
          ? 'yes'
          : 'no'
        : value
  return unit === '1' || unit === '' ? figure : `${figure} ${unit.replace('m2', 'm²').replace('m3', 'm³')}`
}

const Used = ({ fields, marked }: { readonly fields: readonly UsedField[]; readonly marked?: string }) => (
  <dl class="facts">
    {fields.map((field) => (
      <div key={field.field} class={field.field === marked ? 'marked' : ''} data-field={field.field}>
        <dt>
          {field.meaning}
          {field.symbol === null ? '' : ` (${field.symbol})`}
        </dt>
        <dd>{valueWords(field)}</dd>
      </div>
    ))}
  </dl>
)

const Sources = ({ item }: { readonly item: NumberOrigin['item'] }) => (
  <ul class="tight">
    {item.sources.map((source) => (
      <li key={source.id}>
        {source.text}
        {source.url === null ? null : (
          <>
            {' '}
            <a href={source.url} target="_blank" rel="noreferrer">
              {PANEL_WORDS.open}
            </a>
          </>
        )}
      </li>
    ))}
  </ul>
)

const Checks = ({ item }: { readonly item: NumberOrigin['item'] }) => {
  const [first, ...rest] = item.checks.toSorted(
    (a, b) => Number(b.class === 'published') - Number(a.class === 'published'),
  )
  if (first === undefined) return null
  return (
    <p>
      {first.where}. <span class="quiet">{PANEL_WORDS.checkClass[first.class]}.</span>{' '}
      {rest.length === 0 ? '' : PANEL_WORDS.moreChecks(rest.length)}
    </p>
  )
}

const Panel = ({ found, output }: { readonly found: NumberOrigin; readonly output: string }) => {
  const { item } = found
  return (
    <div class="stack">
      <h2 id="origin-title">{item.title}</h2>
      <p>{item.words}</p>
      <p class="formula">{item.formula}</p>
      {found.error === null ? null : (
        <Note kind="rust" word="No answer:">
          {calculationErrorWords(found.error)}.
        </Note>
      )}
      <h3>{PANEL_WORDS.result}</h3>
      <Used fields={found.outputs} marked={output} />
      <h3>{PANEL_WORDS.inputs}</h3>
      <Used fields={found.inputs} />
      <h3>{PANEL_WORDS.evidence[item.evidence]}</h3>
      <Sources item={item} />
      {item.notes.length === 0 ? null : (
        <ul class="tight small">
          {item.notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
      <h3>{PANEL_WORDS.check}</h3>
      <Checks item={item} />
      <p class="small quiet">{PANEL_WORDS.byHand(item.name)}</p>
    </div>
  )
}

/** Where a number comes from: formula in words, what went in, source, how sure, and the published row it is checked by. */
export const NumberPanel = () => {
  const dialog = useRef<HTMLDialogElement>(null)
  const asked = askedFigure.value
  useEffect(() => {
    if (asked === null) return
    origin.clear()
    origin.ask(() => compute('origin', { name: asked.item, input: asked.input }))
    dialog.current?.showModal()
  }, [asked])
  const found = origin.value.value
  return (
    <dialog
      ref={dialog}
      class="number-panel"
      aria-label={PANEL_WORDS.title}
      onClose={() => {
        askedFigure.value = null
      }}
      onClick={(event) => {
        // A press beside the panel closes it, as Escape does.
        if (event.target === dialog.current) dialog.current?.close()
      }}
    >
      <div class="row apart">
        <p class="quiet small">{PANEL_WORDS.title}</p>
        <button type="button" class="thin" onClick={() => dialog.current?.close()}>
          {PANEL_WORDS.close}
        </button>
      </div>
      {asked === null || found === null ? (
        <p role="status">…</p>
      ) : (
        <Panel found={found} output={asked.output} />
      )}
    </dialog>
  )
}
