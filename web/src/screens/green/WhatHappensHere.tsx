import { decimal, durationWords, figureOf, shareWords, taskTodo, unitMark } from '@swardwright/present'
import type { GreenFigures } from '../../compute/figures.ts'
import { Asked, Fact, Figure } from '../../parts/Figure.tsx'
import { Fold } from '../../parts/Fold.tsx'
import { massWords, sandBand } from '../../parts/quantity-words.ts'
import { units } from '../../state/course.ts'
import { WORDS } from './words.ts'

const Steps = ({ figures }: { readonly figures: GreenFigures }) => (
  <table>
    <tbody>
      {figures.steps.map((step, at) => (
        <tr key={at}>
          <th scope="row">{taskTodo({ ...step, loads: figures.sand.loads })}</th>
          <td class="number">{step.minutes === 0 ? 'no machine' : durationWords(step.minutes)}</td>
        </tr>
      ))}
    </tbody>
  </table>
)

const OrganicOut = ({ figures }: { readonly figures: GreenFigures }) => {
  const { out, from } = figures
  if (out === null) return null
  const mass = massWords(out.organicKg)
  return (
    <Fact
      word={WORDS.organicOut}
      range={
        <>
          {from.coresOut === null ? null : <Asked from={from.coresOut}>{WORDS.ofCores}</Asked>}
          {from.coresOut === null || from.groovesOut === null ? null : ' · '}
          {from.groovesOut === null ? null : <Asked from={from.groovesOut}>{WORDS.ofGrooves}</Asked>}
        </>
      }
    >
      {mass.figure} {mass.unit}
    </Fact>
  )
}

/** What the prescription comes to on this green, in figures that can be asked where they come from. */
export const WhatHappensHere = (props: {
  readonly figures: GreenFigures | undefined
  readonly prescribed: boolean
}) => {
  const { figures } = props
  if (figures === undefined)
    return (
      <p>
        {props.prescribed ? WORDS.working : WORDS.notPrescribed}{' '}
        <a href="/prescription">{WORDS.toPrescription}</a>
      </p>
    )
  return (
    <div class="stack">
      <div class="figures">
        <Figure
          label={WORDS.opened}
          value={decimal(figures.shareSummed * 100, 1)}
          unit="%"
          range={`${shareWords(figures.shareTouched)} ${WORDS.touched}`}
          from={figures.from.share ?? undefined}
        />
        <Figure
          label={WORDS.sand}
          value={figureOf('sand', figures.sand.likelyT, units.value)}
          unit={unitMark('sand', units.value)}
          range={sandBand(figures.sand)}
          from={figures.from.sand ?? undefined}
        />
      </div>
      <dl class="facts">
        <Fact word={WORDS.loads}>{figures.sand.loads}</Fact>
        <Fact word={WORDS.coresOut}>{decimal(figures.coresL, 0)} L</Fact>
        <OrganicOut figures={figures} />
        <Fact word={WORDS.work} range={WORDS.workRange}>
          {durationWords(figures.workMin + figures.waitMin)}
        </Fact>
      </dl>
      {(figures.out?.notTestedBelowMm ?? null) === null ? null : <p class="small ochre">{WORDS.below}</p>}
      <Fold summary={WORDS.steps}>{() => <Steps figures={figures} />}</Fold>
      <a href="/prescription">{WORDS.toPrescription}</a>
    </div>
  )
}
