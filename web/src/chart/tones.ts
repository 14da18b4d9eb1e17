/** The page's own colours, as a picture names them. */
export const tones = {
  ink: 'var(--ink)',
  soft: 'var(--soft)',
  rule: 'var(--rule)',
  blank: 'var(--blank)',
  spruce: 'var(--spruce)',
  maple: 'var(--maple)',
  paper: 'var(--paper)',
} as const

/** Sets words off from what they stand upon. */
export const halo = { stroke: tones.paper, strokeWidth: 4 } as const
