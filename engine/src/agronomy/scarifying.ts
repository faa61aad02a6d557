import * as v from 'valibot'
import { item } from '../catalogue/item.ts'
import { figure, words } from '../catalogue/quantity.ts'
import { ok } from '../result.ts'
import { removedMasses } from './coring.ts'
import { grooveWork, groovesInput } from './grooves.ts'
import { layersSchema, reachDepth } from './layers.ts'
import { LAYERS_TO_80_MM } from './published-profile.ts'
import { SCARIFYING_REMOVAL_CHECKS } from './removal-checks.ts'

/** `scarifying.removal`: what the blades touch and take out. */
export const scarifyingRemoval = item({
  name: 'scarifying.removal',
  title: 'What the scarifier takes out',
  words:
    'Blade width over blade spacing is the share of surface of one pass. Two crossing passes share the crossings, so they touch a little less than the sum; passes in new lines add up. Removal goes by the union when crossed and by the passes when in new lines; the answer says which.',
  formula:
    'p = w / s; summed n p; union 1 - (1 - p)^n; V = P h with P = union (crossed) or n p (new lines); m = P sum(t rho(OM)); OM out = P sum(t rho(OM) OM / 100)',
  evidence: 'measured trial',
  sources: ['ervinNichols2010', 'landreth2008', 'geometry'],
  notes: [
    'A second pass in the same line may run in the old grooves: then it removes anything between one pass and two.',
    'Sources disagree: in Arkansas aggressive verticutting removed more organic matter than coring and recovered slowest; in Virginia verticutting alone recovered in 27.5 days and lowered organic matter least. Depth, sand filling and testing differed.',
    'Organic matter taken out is not a lower percentage: the sand that fills the grooves lowers it.',
  ],
  inputs: v.strictObject({ ...groovesInput, layers: layersSchema }),
  outputs: v.strictObject({
    areaShareOnePass: figure({ meaning: 'Share of the surface touched by one pass', unit: '1', symbol: 'p' }),
    areaShareSummed: figure({ meaning: 'Shares of all passes added up', unit: '1' }),
    areaShareUnion: figure({ meaning: 'Share of the surface touched at least once', unit: '1' }),
    volumeLPerM2: figure({ meaning: 'Volume taken out of the grooves', unit: 'L/m2', symbol: 'V' }),
    dryMassGPerM2: figure({ meaning: 'Dry mass taken out', unit: 'g/m2', symbol: 'm' }),
    organicGPerM2: figure({ meaning: 'Organic matter in it', unit: 'g/m2' }),
    removalBy: words('Which share the removal is counted by: union (crossed) or passes (new lines)'),
  }),
  checks: [
    ...SCARIFYING_REMOVAL_CHECKS,
    {
      id: 'groove-organic',
      class: 'derived',
      source: 'ervinNichols2010',
      where:
        'by hand: 2.2441 L/m2 at 6.7 % (1.1079 g/cm3) is 2486.2 g, of which 166.6 g organic; the trial setting with the published top layer',
      input: {
        bladeWidthMm: 3,
        bladeSpacingMm: 25.4,
        depthMm: 19,
        passes: 1,
        crossed: false,
        layers: LAYERS_TO_80_MM,
      },
      output: 'organicGPerM2',
      expected: 166.6,
      tolerance: 0.1,
    },
    {
      id: 'groove-crossed-volume',
      class: 'derived',
      source: 'geometry',
      where: 'by hand: crossed, 1 - 0.88189^2 = 0.22227 of 19 mm is 4.2231 L/m2, not 4.488',
      input: {
        bladeWidthMm: 3,
        bladeSpacingMm: 25.4,
        depthMm: 19,
        passes: 2,
        crossed: true,
        layers: LAYERS_TO_80_MM,
      },
      output: 'volumeLPerM2',
      expected: 4.2231,
      tolerance: 0.0005,
    },
  ],
  run: (input) => {
    const work = grooveWork(input)
    if (!work.ok) return work
    const reach = reachDepth(input.layers, input.depthMm)
    if (!reach.ok) return reach
    const { removalShare, ...shares } = work.value
    return ok({
      ...shares,
      ...removedMasses(input.layers, input.depthMm, removalShare),
      removalBy: input.crossed ? 'union' : 'passes',
    })
  },
})
