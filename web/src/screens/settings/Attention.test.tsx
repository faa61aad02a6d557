// @vitest-environment happy-dom
import { render } from 'preact'
import { act } from 'preact/test-utils'
import { expect, it } from 'vitest'
import { REFUSAL_REASONS } from '@swardwright/journal'
import { SyncLine } from '../../shell/SyncLine.tsx'
import { refused } from '../../state/journal.ts'
import { record } from '../../state/record.ts'
import { demo, openHere } from '../../state/testing/open-here.ts'
import { Attention } from './Attention.tsx'

/** What the person reads, by hand: the cause and what to do. */
const TOLD = {
  'too-old': ['too old for the server', 'take the new version', 'record this again'],
  'not-allowed': ['may not record that', 'Ask the manager'],
  'bad-body': ['cannot read it', 'Record it again'],
  'too-large': ['too large to send', 'Record it in parts'],
  clock: ['clock of this device is more than a day off', 'Set it', 'record this again'],
} as const

it.each(REFUSAL_REASONS)(
  'an entry refused as %s is named, with its cause and what to do in plain words',
  async (why) => {
    await openHere(demo)
    const id = await record('noteWritten', { words: 'Wet hollow' })
    refused.value = [{ id, why }]
    await act(() =>
      render(
        <>
          <SyncLine />
          <Attention />
        </>,
        document.getElementById('app') ?? document.body,
      ),
    )
    const link = document.querySelector('a')
    expect(link?.textContent).toBe('1 change needs attention')
    expect(link?.getAttribute('href')).toBe('/settings#attention')
    const told = document.getElementById('attention')?.textContent ?? ''
    expect(told).toContain('A note was written.')
    for (const words of TOLD[why]) expect(told).toContain(words)
  },
)
