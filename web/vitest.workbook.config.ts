import { defineConfig } from 'vitest/config'

// The workbooks that go to partners, read and worked by programs that are not
// ours. It needs the Go toolchain, which makes the workbooks and the answers.
export default defineConfig({
  test: {
    include: ['workbook/**/*.test.ts'],
    environment: 'node',
    testTimeout: 300_000,
    hookTimeout: 600_000,
  },
})
