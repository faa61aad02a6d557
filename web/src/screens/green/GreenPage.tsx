import { quantityWords } from '@swardwright/present'
import { useRoute } from 'preact-iso'
import { Page, Part } from '../../parts/Page.tsx'
import { greenCalled, units, useCourse } from '../../state/course.ts'
import { figuresOf } from '../../state/figures.ts'
import { prescription } from '../../state/prescription.ts'
import { PhotosOfGreen } from '../photos/PhotosOfGreen.tsx'
import { WORDS as PHOTO_WORDS } from '../photos/words.ts'
import { groupTaking } from '../prescription/edit.ts'
import { GreenFacts } from './GreenFacts.tsx'
import { LostGreen } from './LostGreen.tsx'
import { OrganicTests } from './OrganicTests.tsx'
import { Section } from './Section.tsx'
import { Services } from './Services.tsx'
import { WhatHappensHere } from './WhatHappensHere.tsx'
import { WORDS } from './words.ts'
import { Deciding } from '../../parts/Deciding.tsx'
import { decides } from '../../state/access.ts'

/** One green: its cut, what the prescription does to it, and its facts. */
export const GreenPage = () => {
  const { params } = useRoute()
  const course = useCourse()
  const green = course.greens.find((one) => one.id === params['id'])
  if (green === undefined) return <LostGreen />
  const group = prescription.value === null ? null : groupTaking(prescription.value, green.id)
  return (
    <Page
      // Another green has fields of its own: what is half typed here is never handed on there.
      key={green.id}
      title={greenCalled(green)}
      over={
        <>
          <a href="/course">{WORDS.back}</a> · {quantityWords('area', green.areaM2, units.value)}
        </>
      }
    >
      <div class="wide">
        <Part title={WORDS.section}>
          <Section green={green} group={group} />
        </Part>
        <Part title={PHOTO_WORDS.photos}>
          <PhotosOfGreen key={green.id} green={green.id} />
        </Part>
        <div class="columns">
          <div class="wide">
            <Part title={WORDS.here}>
              <WhatHappensHere figures={figuresOf(green.id)} prescribed={group !== null} />
              <p>
                <a href={`/green/${encodeURIComponent(green.id)}/runs`}>{WORDS.toRuns}</a>
              </p>
            </Part>
            <Part title={WORDS.tests}>
              <Deciding>
                <OrganicTests green={green} />
              </Deciding>
            </Part>
            <Part title={WORDS.services}>
              <Deciding>
                <Services green={green} />
              </Deciding>
            </Part>
          </div>
          <Part title={WORDS.facts}>
            <Deciding>
              <GreenFacts green={green} />
            </Deciding>
            {decides.value ? (
              <p>
                <a href={`/green/${encodeURIComponent(green.id)}/outline`}>
                  {green.outline === undefined ? WORDS.drawOutline : WORDS.changeOutline}
                </a>
              </p>
            ) : null}
          </Part>
        </div>
      </div>
    </Page>
  )
}
