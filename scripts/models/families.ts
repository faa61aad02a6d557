import {
  colourPicture,
  compostPicture,
  gradingPicture,
  growthPicture,
  nutritionPicture,
  organicPicture,
  readingsPicture,
  recoveryPicture,
  sandPicture,
  waterPicture,
} from './pictures.ts'
import { passesPicture } from './passes-picture.ts'
import { patternPicture } from './pattern-picture.ts'
import { profilePicture } from './profile-picture.ts'

/** One page of models: which items it tells, and the picture that explains them. */
export type Family = {
  /** Name of the page, the words file and the picture. */
  readonly file: string
  readonly title: string
  /** Beginnings of the names of its items. */
  readonly items: readonly string[]
  readonly picture: () => string
  /** What the picture shows, under it and for those who cannot see it. */
  readonly shows: string
}

/** Every page, in the order of the work. Every item of the catalogue belongs to exactly one. */
export const FAMILIES: readonly Family[] = [
  {
    file: 'tining',
    title: 'Tining: holes and the surface they take',
    items: ['tining.', 'surface.', 'tines.'],
    picture: patternPicture,
    shows:
      'Two passes of tines from above. Passes are added up in programmes; a few holes of the second fall into those of the first.',
  },
  {
    file: 'removal',
    title: 'Coring and scarifying: what comes out',
    items: ['coring.', 'scarifying.'],
    picture: profilePicture,
    shows:
      'A cut through a green. Cores reach deep through clean sand; grooves stay where the organic matter is.',
  },
  {
    file: 'organic-matter',
    title: 'Organic matter: weighing it, diluting it, holding it',
    items: ['organic.'],
    picture: organicPicture,
    shows: 'Dressing dilutes. The quick rule by volume understates it where there is much organic matter.',
  },
  {
    file: 'sand',
    title: 'Sand: rates, moisture and the order',
    items: ['sand.', 'dressing.'],
    picture: sandPicture,
    shows: 'Sand for a square metre, low, likely and high.',
  },
  {
    file: 'passes',
    title: 'Passes: strips, turns and time on a green',
    items: ['passes.'],
    picture: passesPicture,
    shows: 'The best heading of a long green follows its length; steps come where a run more is needed.',
  },
  {
    file: 'sand-grading',
    title: 'Sand grading: sieves, standards and matching',
    items: ['sandGrading.'],
    picture: gradingPicture,
    shows: 'Sizes are read straight between two sieves on the logarithm of the size.',
  },
  {
    file: 'growth',
    title: 'Growth: temperature, nitrogen, clippings',
    items: ['growth.', 'clippings.'],
    picture: growthPicture,
    shows: 'Growth potential of cool-season and warm-season grass.',
  },
  {
    file: 'recovery',
    title: 'Recovery: when holes and grooves have closed',
    items: ['recovery.'],
    picture: recoveryPicture,
    shows: 'Closing of a 12 mm core hole with its range, and of a 3 mm groove.',
  },
  {
    file: 'turf-colour',
    title: 'Colour: how green turf looks on a photo',
    items: ['turfColour.'],
    picture: colourPicture,
    shows: 'The index rises with the hue, and dark dull turf scores higher than bright.',
  },
  {
    file: 'nutrition',
    title: 'Feed: label arithmetic',
    items: ['nutrition.'],
    picture: nutritionPicture,
    shows: 'The same label by mass or by volume is not the same nitrogen.',
  },
  {
    file: 'compost',
    title: 'Compost: moisture and carbon to nitrogen',
    items: ['compost.'],
    picture: compostPicture,
    shows: 'Leaves dry the heap and bring carbon.',
  },
  {
    file: 'readings',
    title: 'Readings: speed, firmness, moisture, and seed',
    items: ['speed.', 'firmness.', 'moisture.', 'seed.'],
    picture: readingsPicture,
    shows: 'On a slope the plain mean of both rolls reads too fast.',
  },
  {
    file: 'water',
    title: 'Water and daylight',
    items: ['weather.', 'daylight.'],
    picture: waterPicture,
    shows: 'Water that grass uses follows the sun through the year as much as the temperature.',
  },
]
