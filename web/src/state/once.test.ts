import { signal } from '@preact/signals'
import { expect, it, vi } from 'vitest'
import { once } from './once.ts'

it('calls back once, after what is waited for', async () => {
  const taps = signal(0)
  const then = vi.fn()
  once(() => taps.value > 2, then)
  for (const count of [1, 3, 4]) taps.value = count
  expect(then).not.toHaveBeenCalled()
  await Promise.resolve()
  expect(then).toHaveBeenCalledTimes(1)
  taps.value = 5
  await Promise.resolve()
  expect(then).toHaveBeenCalledTimes(1)
})

it('calls back for what is so already, and not when it is waited for no longer', async () => {
  const now = vi.fn()
  once(() => true, now)
  const taps = signal(0)
  const never = vi.fn()
  once(() => taps.value > 2, never)()
  taps.value = 3
  await Promise.resolve()
  expect(now).toHaveBeenCalledTimes(1)
  expect(never).not.toHaveBeenCalled()
})
