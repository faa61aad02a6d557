import { bent, waved, type Spot } from './shapes.ts'

/** One hole of the demo: where it is played from and to, and the green at its end. */
export type Hole = {
  readonly green: string
  readonly name: string
  readonly hole: number | null
  readonly tee: Spot | null
  readonly spot: Spot
  readonly areaM2: number
  readonly turnDeg: number
  readonly shape: readonly Spot[]
  /** Bunkers beside the green: bearing from its centre, degrees clockwise from north, and area, m2. */
  readonly bunkers: readonly (readonly [bearingDeg: number, areaM2: number])[]
}

const kidney = (points: number) =>
  waved(points, [
    [2, 0.2, 0],
    [3, 0.14, 90],
    [5, 0.02, 20],
  ])
const pear = (points: number) =>
  waved(points, [
    [2, 0.1, 0],
    [3, 0.07, 0],
    [4, 0.02, 40],
  ])
const threeLobed = (points: number) =>
  waved(points, [
    [3, 0.24, 0],
    [2, 0.06, 50],
    [5, 0.02, 10],
  ])
const waisted = (points: number) =>
  waved(points, [
    [2, 0.3, 0],
    [4, 0.05, 30],
    [3, 0.06, 0],
  ])
const shield = (points: number) =>
  waved(points, [
    [3, 0.09, 0],
    [2, 0.05, 30],
    [4, 0.03, 0],
  ])
const cloud = (points: number) =>
  waved(points, [
    [4, 0.11, 15],
    [2, 0.1, 60],
    [3, 0.05, 140],
  ])
const bay = (points: number) =>
  waved(points, [
    [2, 0.12, 20],
    [3, 0.13, 60],
    [4, 0.06, 100],
    [5, 0.03, 0],
  ])
const leaf = (points: number) =>
  waved(points, [
    [2, 0.22, 0],
    [3, 0.05, 30],
    [1, 0.04, 70],
  ])

/** The course: two loops of nine that begin and end at the shed, and a practice green. All names are invented. */
export const HOLES: readonly Hole[] = [
  {
    green: 'g01',
    name: 'Gatepost',
    hole: 1,
    tee: [610, 130],
    spot: [560, 500],
    areaM2: 468,
    turnDeg: 15,
    shape: pear(32),
    bunkers: [
      [240, 46],
      [110, 38],
    ],
  },
  {
    green: 'g02',
    name: 'Larkrise',
    hole: 2,
    tee: [590, 545],
    spot: [640, 830],
    areaM2: 512,
    turnDeg: 70,
    shape: kidney(36),
    bunkers: [[185, 52]],
  },
  {
    green: 'g03',
    name: 'Thimble',
    hole: 3,
    tee: [590, 862],
    spot: [440, 825],
    areaM2: 318,
    turnDeg: 130,
    shape: shield(28),
    bunkers: [
      [60, 40],
      [150, 34],
      [280, 44],
    ],
  },
  {
    green: 'g04',
    name: 'Longshadow',
    hole: 4,
    tee: [400, 800],
    spot: [455, 430],
    areaM2: 545,
    turnDeg: 200,
    shape: waisted(40),
    bunkers: [[20, 60]],
  },
  {
    green: 'g05',
    name: 'Underwood',
    hole: 5,
    tee: [410, 395],
    spot: [300, 700],
    areaM2: 402,
    turnDeg: 35,
    shape: cloud(36),
    bunkers: [],
  },
  {
    green: 'g06',
    name: 'Saltpan',
    hole: 6,
    tee: [255, 738],
    spot: [70, 830],
    areaM2: 488,
    turnDeg: 300,
    shape: bent(40, 130, 0.42),
    bunkers: [
      [120, 48],
      [210, 42],
    ],
  },
  {
    green: 'g07',
    name: 'Dimwell',
    hole: 7,
    tee: [45, 778],
    spot: [130, 330],
    areaM2: 376,
    turnDeg: 80,
    shape: bay(34),
    bunkers: [[0, 36]],
  },
  {
    green: 'g08',
    name: 'Curlew',
    hole: 8,
    tee: [95, 288],
    spot: [180, 70],
    areaM2: 437,
    turnDeg: 160,
    shape: threeLobed(42),
    bunkers: [[30, 40]],
  },
  {
    green: 'g09',
    name: 'Homeward',
    hole: 9,
    tee: [235, 58],
    spot: [545, 160],
    areaM2: 566,
    turnDeg: 20,
    shape: leaf(36),
    bunkers: [
      [250, 58],
      [330, 44],
    ],
  },
  {
    green: 'g10',
    name: 'Southacre',
    hole: 10,
    tee: [728, 98],
    spot: [1010, 90],
    areaM2: 452,
    turnDeg: 110,
    shape: kidney(34),
    bunkers: [[290, 50]],
  },
  {
    green: 'g11',
    name: 'Plank',
    hole: 11,
    tee: [1060, 78],
    spot: [1260, 300],
    areaM2: 530,
    turnDeg: 50,
    shape: bay(38),
    bunkers: [
      [215, 46],
      [130, 40],
    ],
  },
  {
    green: 'g12',
    name: 'Pocket',
    hole: 12,
    tee: [1278, 345],
    spot: [1240, 490],
    areaM2: 334,
    turnDeg: 210,
    shape: shield(30),
    bunkers: [
      [180, 42],
      [80, 38],
    ],
  },
  {
    green: 'g13',
    name: 'Ridgeway',
    hole: 13,
    tee: [1262, 533],
    spot: [1190, 866],
    areaM2: 498,
    turnDeg: 145,
    shape: bent(44, 100, 0.36),
    bunkers: [[165, 50]],
  },
  {
    green: 'g14',
    name: 'Farmost',
    hole: 14,
    tee: [1140, 886],
    spot: [770, 850],
    areaM2: 610,
    turnDeg: 10,
    shape: waisted(42),
    bunkers: [
      [90, 62],
      [200, 40],
    ],
  },
  {
    green: 'g15',
    name: 'Kiln',
    hole: 15,
    tee: [733, 803],
    spot: [755, 560],
    areaM2: 424,
    turnDeg: 260,
    shape: pear(30),
    bunkers: [[350, 44]],
  },
  {
    green: 'g16',
    name: 'Heronsgate',
    hole: 16,
    tee: [800, 545],
    spot: [1090, 700],
    areaM2: 556,
    turnDeg: 330,
    shape: threeLobed(44),
    bunkers: [[240, 52]],
  },
  {
    green: 'g17',
    name: 'Nook',
    hole: 17,
    tee: [1115, 652],
    spot: [1085, 490],
    areaM2: 352,
    turnDeg: 75,
    shape: cloud(32),
    bunkers: [
      [10, 40],
      [280, 36],
    ],
  },
  {
    green: 'g18',
    name: 'Clockface',
    hole: 18,
    tee: [1045, 468],
    spot: [735, 175],
    areaM2: 648,
    turnDeg: 45,
    shape: kidney(46),
    bunkers: [
      [45, 60],
      [300, 48],
    ],
  },
  {
    green: 'practice',
    name: 'Practice',
    hole: null,
    tee: null,
    spot: [610, 55],
    areaM2: 662,
    turnDeg: 95,
    shape: leaf(40),
    bunkers: [],
  },
]
