/** What is known of each green besides its outline; figures are invented, their spread as clubs' results have it. */
type GreenFacts = Readonly<Record<string, unknown>>

/** Organic matter in June, % by loss on ignition: 0-20, 20-40, 40-60 mm. */
type Layers = readonly [number, number, number]

const layersOf = ([top, middle, low]: Layers) => [
  { fromMm: 0, toMm: 20, organicPercent: top },
  { fromMm: 20, toMm: 40, organicPercent: middle },
  { fromMm: 40, toMm: 60, organicPercent: low },
]

const tested = (date: string, layers: Layers) => ({
  date,
  laboratory: 'Sallowfield Soil Laboratory',
  burnC: 440,
  verdure: 'in',
  layers: layersOf(layers),
})

const service = (id: string, kind: string, keepClearM: number, depthMm: number) => ({
  id,
  kind,
  located: true,
  flagged: true,
  by: 'Tobin',
  date: '2026-08-07',
  depthMm,
  keepClearM,
})

const facts = (last: Layers, before: Layers, other: GreenFacts = {}): GreenFacts => ({
  rootzone: { kind: 'sand', goodDepthMm: 250 },
  drainage: 'well',
  shade: 'open',
  weak: false,
  servicesChecked: true,
  organicTests: [tested('2025-06-17', before), tested('2026-06-16', last)],
  services: [],
  ...other,
})

const WEAK = { drainage: 'poor', shade: 'dense', weak: true }
const MODERATE = { drainage: 'moderate' }

/** Facts by green. The three weak greens lie under the woods, and their tests show it. */
export const GREEN_FACTS: Readonly<Record<string, GreenFacts>> = {
  g01: facts([6.1, 3.6, 2.4], [5.9, 3.5, 2.4], { services: [service('g01-ring', 'irrigation', 0.5, 380)] }),
  g02: facts([5.4, 3.1, 2.1], [5.3, 3.0, 2.2]),
  g03: facts([6.6, 3.9, 2.6], [6.2, 3.8, 2.5], MODERATE),
  g04: facts([5.2, 2.9, 2.0], [5.3, 2.9, 1.9]),
  g05: facts([8.1, 4.8, 3.1], [7.6, 4.6, 3.0], { ...WEAK, rootzone: { kind: 'sand', goodDepthMm: 180 } }),
  g06: facts([4.7, 2.7, 1.9], [4.8, 2.6, 1.9]),
  g07: facts([8.5, 5.1, 3.4], [7.9, 4.8, 3.2], {
    ...WEAK,
    rootzone: { kind: 'sand', goodDepthMm: 150 },
    services: [service('g07-drain', 'drain', 0.6, 420)],
  }),
  g08: facts([5.7, 3.2, 2.2], [5.5, 3.2, 2.1]),
  g09: facts([6.0, 3.4, 2.3], [5.7, 3.3, 2.3], {
    services: [service('g09-power', 'power', 1, 500), service('g09-ring', 'irrigation', 0.5, 350)],
  }),
  g10: facts([5.5, 3.0, 2.1], [5.4, 3.0, 2.0]),
  g11: facts([4.9, 2.8, 1.8], [4.7, 2.8, 1.9]),
  g12: facts([6.9, 4.0, 2.7], [6.5, 3.9, 2.6], { ...MODERATE, shade: 'part' }),
  g13: facts([4.5, 2.6, 1.8], [4.6, 2.5, 1.7]),
  g14: facts([5.8, 3.3, 2.3], [5.6, 3.2, 2.2], {
    services: [{ id: 'g14-control', kind: 'control', located: false, flagged: false, keepClearM: 1 }],
  }),
  g15: facts([5.6, 3.2, 2.0], [5.4, 3.1, 2.1]),
  g16: facts([5.1, 2.9, 2.0], [5.0, 2.8, 2.0]),
  g17: facts([7.8, 4.5, 3.0], [7.4, 4.4, 2.9], {
    ...WEAK,
    drainage: 'moderate',
    rootzone: { kind: 'sand', goodDepthMm: 200 },
  }),
  g18: facts([6.3, 3.7, 2.5], [6.0, 3.6, 2.4], MODERATE),
  practice: facts([6.7, 3.8, 2.6], [6.3, 3.7, 2.5], {
    services: [service('practice-water', 'water', 0.75, 600)],
  }),
}
