import type { RunsTold } from '../../compute/runs-told.ts'
import { Fold } from '../../parts/Fold.tsx'
import { NumberField } from '../../parts/NumberField.tsx'
import type { Asked } from './asked.ts'
import { clockLines } from './told.ts'
import { WORDS } from './words.ts'

const HALF_TURN_DEG = 180

/** Another heading than the one proposed, by the clock or in degrees, and the angle between passes. */
export const HeadingChoice = (props: {
  readonly told: RunsTold
  readonly twelveDeg: number
  readonly ask: (changed: Partial<Asked>) => void
}) => {
  const { told, twelveDeg, ask } = props
  const shownDeg = (told.told[0]?.passes.headingDeg ?? 0) % HALF_TURN_DEG
  return (
    <div class="no-print">
      <Fold summary={WORDS.another}>
        {() => (
          <>
            <p class="small quiet">{WORDS.anotherHint}</p>
            <div class="row">
              {clockLines(twelveDeg).map(({ headingDeg, words }) => (
                <button
                  key={words}
                  type="button"
                  class="thin"
                  aria-pressed={told.reason.by === 'chosen' && Math.abs(shownDeg - headingDeg) < 0.5}
                  onClick={() => ask({ headingDeg })}
                >
                  {words}
                </button>
              ))}
            </div>
            <div class="fields">
              <NumberField
                label={WORDS.exact}
                unit="°"
                value={shownDeg}
                min={0}
                max={360}
                digits={0}
                onValue={(headingDeg) => ask({ headingDeg })}
              />
              {told.choice.passes < 2 ? null : (
                <NumberField
                  label={WORDS.turn}
                  unit="°"
                  value={told.turnDeg}
                  min={0}
                  max={180}
                  digits={0}
                  onValue={(turnDeg) => ask({ turnDeg })}
                />
              )}
            </div>
            {told.reason.by === 'best' ? null : (
              <button type="button" onClick={() => ask({ headingDeg: null })}>
                {WORDS.best}
              </button>
            )}
          </>
        )}
      </Fold>
    </div>
  )
}
