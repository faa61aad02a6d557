import type { SandOrder } from '../../compute/sand-order.ts'

export const SandBar = (_: { readonly order: SandOrder }) => null
