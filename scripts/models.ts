import { mkdirSync, writeFileSync } from 'node:fs'
import { modelFiles, MODELS_FOLDER } from './models/files.ts'

// Run as: node --conditions=swardwright-source --import tsx scripts/models.ts
mkdirSync(new URL('pictures/', MODELS_FOLDER), { recursive: true })
for (const [path, text] of modelFiles()) writeFileSync(new URL(path, MODELS_FOLDER), text)
