import { describeStorage } from './acceptance.ts'
import { memoryStorage } from './memory.ts'

describeStorage('storage in memory', async () => memoryStorage())
