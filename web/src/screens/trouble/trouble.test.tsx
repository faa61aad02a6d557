// @vitest-environment happy-dom
import { render, type ComponentChildren } from 'preact'
import { act } from 'preact/test-utils'
import { beforeEach, describe, expect, it, vi } from 'vitest'
import { facts } from '../../state/journal.ts'
import { demo, openHere as open } from '../../state/testing/open-here.ts'
import { TellProblem } from '../crew/TellProblem.tsx'
import { MoreTrouble } from '../now/OneTouch.tsx'
import { BrokenOff } from './BrokenOff.tsx'
import { SandShort } from './SandShort.tsx'
import { TinesShort } from './TinesShort.tsx'

// What the manager's buttons show of the day worked out again comes from a worker, which there is none of here.
vi.mock('../../state/compute.ts', () => ({ compute: {} }))

const show = (what: ComponentChildren) =>
  act(() => render(what, document.getElementById('app') ?? document.body))

const press = async (words: string): Promise<void> => {
  const button = [...document.querySelectorAll('button')].find((one) => one.textContent.trim() === words)
  if (button === undefined) throw new Error(`no button ‘${words}’ in: ${document.body.textContent}`)
  await act(async () => {
    button.click()
    await Promise.resolve()
  })
}

const type = (field: HTMLInputElement | HTMLTextAreaElement | null, text: string) =>
  act(() => {
    if (field === null) throw new Error('no field to type in')
    field.value = text
    field.dispatchEvent(new Event('input', { bubbles: true }))
    field.dispatchEvent(new Event('blur'))
  })

const problems = () => facts.value.problems.map(({ value }) => value)

describe('sand that is short', () => {
  beforeEach(() => open(demo))

  it('is told by two presses: which, and how much is left', async () => {
    const close = vi.fn()
    await show(<SandShort close={close} />)
    await press('Kiln-dried sand')
    await press('0.5 t')
    await vi.waitFor(() =>
      expect(problems()).toEqual([{ problem: 'sandShort', sand: 'kilnDried', massT: 0.5 }]),
    )
    expect(close).toHaveBeenCalledOnce()
  })

  it('can be none, and any figure that is typed', async () => {
    await show(<SandShort close={() => undefined} />)
    await press('Damp sand')
    await press('None')
    await type(document.querySelector('input'), '7.25')
    await press('Write it down')
    await vi.waitFor(() =>
      expect(problems().map((one) => ('massT' in one ? one.massT : null))).toEqual([0, 7.25]),
    )
  })

  it('asks not which where the club has one sand, and speaks in its unit: 2 short tons are 1.8144 t', async () => {
    await open({
      ...demo,
      stores: demo.stores.filter(({ kind }) => kind === 'damp'),
      units: { ...demo.units, sand: 'shortTon' },
    })
    await show(<SandShort close={() => undefined} />)
    const button = [...document.querySelectorAll('button')].find((one) => one.textContent.startsWith('2 '))
    await press(button?.textContent ?? '')
    // 2 x 2000 lb x 0.45359237 kg.
    await vi.waitFor(() => expect(problems()[0]).toMatchObject({ sand: 'damp', massT: 1.81436948 }))
  })
})

describe('tines that are short', () => {
  const trouble = <TellProblem person="maren" green={null} machines={[]} />
  const set = (id: string, holeDiameterMm: number, coreDiameterMm: number) => ({
    id,
    holeDiameterMm,
    coreDiameterMm,
    sets: 2,
    deliveries: [],
  })

  it('are told by the crew: which kind, where there are several, and how many sets are left', async () => {
    await open({
      ...demo,
      tineSets: [set('shed', 12, 9), set('solid', 10, 0), set('van', 12, 9)],
    })
    await show(trouble)
    await press('Problem')
    await press('Tines are short')
    // Two entries of one kind are one choice.
    expect(document.querySelectorAll('dialog li')).toHaveLength(2)
    await press('Hollow tines, 12 mm (9 mm inside)')
    await press('0.5 sets')
    await vi.waitFor(() => expect(problems()).toEqual([{ problem: 'tinesShort', store: 'shed', sets: 0.5 }]))
  })

  it('can be none, and any figure that is typed; the only kind is not asked for', async () => {
    await open({ ...demo, tineSets: [set('solid', 10, 0)] })
    await show(<TinesShort close={() => undefined} />)
    await press('None')
    await type(document.querySelector('input'), '1.25')
    await press('Write it down')
    await vi.waitFor(() =>
      expect(problems()).toEqual([
        { problem: 'tinesShort', store: 'solid', sets: 0 },
        { problem: 'tinesShort', store: 'solid', sets: 1.25 },
      ]),
    )
  })

  it.each([undefined, []])(
    'are not offered, to crew or manager, where nobody counts them (%j)',
    async (tineSets) => {
      const { tineSets: _counted, ...rest } = demo
      await open(tineSets === undefined ? rest : { ...rest, tineSets })
      for (const [what, button] of [
        [trouble, 'Problem'],
        [<MoreTrouble />, 'Other trouble'],
      ] as const) {
        await show(what)
        await press(button)
        expect(document.body.textContent).toContain('Sand is short')
        expect(document.body.textContent).not.toContain('Tines are short')
      }
    },
  )

  it('are offered to the manager where they are counted', async () => {
    await open(demo)
    await show(<MoreTrouble />)
    await press('Other trouble')
    await press('Tines are short')
    expect(document.body.textContent).toContain('Which tines?')
  })
})

it('a step broken off is told with its covering and why, by one press', async () => {
  await open(demo)
  const covering = { green: 'g03', operation: 'scarify', pass: 2 } as const
  await show(<BrokenOff covering={covering} words="3: scarify" close={() => undefined} />)
  await press('It gets dark')
  await vi.waitFor(() =>
    expect(facts.value.tasksStopped.map(({ value }) => value)).toEqual([{ ...covering, why: 'dark' }]),
  )
})

it('what is wrong with a green is told of the green that was meant, also when the next stay begins meanwhile', async () => {
  await open(demo)
  const at = (green: string) => <TellProblem person="maren" green={green} machines={[]} />
  await show(at('g03'))
  await press('Problem')
  const named = [...document.querySelectorAll('button')].find((one) =>
    one.textContent.startsWith('Something on'),
  )
  await press(named?.textContent.trim() ?? '')
  await type(document.querySelector('textarea'), 'torn holes')
  await show(at('g04'))
  expect(document.querySelector('textarea')?.value).toBe('torn holes')
  await press('Tell the manager')
  await vi.waitFor(() =>
    expect(problems()).toEqual([{ problem: 'green', green: 'g03', words: 'torn holes' }]),
  )
})
