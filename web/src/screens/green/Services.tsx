import { greenSchema, type Green } from '@swardwright/engine'
import { Select, TextField, Tick } from '../../parts/fields.tsx'
import { Fold } from '../../parts/Fold.tsx'
import { Measured } from '../../parts/Measured.tsx'
import { newId } from '../../parts/new-id.ts'
import { setGreen } from './GreenFacts.tsx'
import { SERVICE_WORDS, WORDS } from './words.ts'

type Service = Green['services'][number]

const KINDS = Object.keys(SERVICE_WORDS) as readonly Service['kind'][]

const state = (service: Service): string =>
  service.located ? (service.flagged ? 'located and flagged' : 'located, not flagged') : 'not located'

const ServiceForm = (props: {
  readonly service: Service
  readonly onService: (fields: Partial<Service>) => void
}) => {
  const { service, onService } = props
  return (
    <>
      <Select
        label={WORDS.serviceKind}
        value={service.kind}
        options={KINDS.map((value) => ({ value, label: SERVICE_WORDS[value] }))}
        onValue={(kind) => onService({ kind })}
      />
      <Tick label={WORDS.located} checked={service.located} onValue={(located) => onService({ located })} />
      <Tick label={WORDS.flagged} checked={service.flagged} onValue={(flagged) => onService({ flagged })} />
      <div class="fields">
        <TextField
          label={WORDS.by}
          value={service.by ?? ''}
          onValue={(by) => by.trim() !== '' && onService({ by: by.trim() })}
        />
        <TextField
          label={WORDS.when}
          type="date"
          value={service.date ?? ''}
          onValue={(date) => date !== '' && onService({ date })}
        />
        <Measured
          schema={greenSchema}
          path={['services', '0', 'depthMm']}
          label={WORDS.cover}
          kind="depth"
          value={service.depthMm ?? null}
          onValue={(depthMm) => onService({ depthMm })}
        />
        <Measured
          schema={greenSchema}
          path={['services', '0', 'keepClearM']}
          label={WORDS.keepClear}
          value={service.keepClearM}
          onValue={(keepClearM) => onService({ keepClearM })}
        />
      </div>
    </>
  )
}

/** Pipes, cables and drains under a green. */
export const Services = ({ green }: { readonly green: Green }) => {
  const { services } = green
  const save = (changed: readonly Service[]) => void setGreen(green, { services: [...changed] })
  const add = () =>
    save([
      ...services,
      {
        id: newId(
          `${green.id} service`,
          services.map((service) => service.id),
        ),
        kind: 'irrigation',
        located: false,
        flagged: false,
        keepClearM: 0.5,
      },
    ])
  return (
    <div class="stack">
      <p class="small quiet">{WORDS.servicesLead}</p>
      <Tick
        label={WORDS.servicesChecked}
        checked={green.servicesChecked}
        onValue={(servicesChecked) => void setGreen(green, { servicesChecked })}
      />
      {services.length === 0 ? <p>{WORDS.servicesNone}</p> : null}
      <div>
        {services.map((service) => (
          <Fold
            key={service.id}
            summary={
              <span>
                {SERVICE_WORDS[service.kind]}{' '}
                <span class={service.located ? 'quiet small' : 'rust small'}>{state(service)}</span>
              </span>
            }
          >
            {() => (
              <>
                <ServiceForm
                  service={service}
                  onService={(fields) =>
                    save(services.map((one) => (one.id === service.id ? { ...one, ...fields } : one)))
                  }
                />
                <button
                  type="button"
                  class="thin"
                  onClick={() => save(services.filter((one) => one.id !== service.id))}
                >
                  {WORDS.removeService}
                </button>
              </>
            )}
          </Fold>
        ))}
      </div>
      <button type="button" class="thin" onClick={add}>
        {WORDS.addService}
      </button>
    </div>
  )
}
