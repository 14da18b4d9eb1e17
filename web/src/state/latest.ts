/** How a question stands: what was last answered, what is wrong, and whether an answer is awaited. */
export interface Asked<T> {
  answer?: T
  trouble?: { text: string; hint?: string }
  asking: boolean
}

/**
 * Asks one question at a time and, of those that came meanwhile, only the
 * newest: a slider that is dragged leaves no queue behind it. An answer stands
 * until the next one comes.
 */
export class Latest<Q, T> {
  readonly #ask: (question: Q) => Promise<T>
  readonly #tell: (asked: Asked<T>) => void
  #asked: Asked<T> = { asking: false }
  #next: { question: Q } | undefined
  #working = false
  #ended = false

  constructor(ask: (question: Q) => Promise<T>, tell: (asked: Asked<T>) => void) {
    this.#ask = ask
    this.#tell = tell
  }

  ask(question: Q): void {
    this.#next = { question }
    if (!this.#asked.asking) this.#say({ ...this.#asked, asking: true })
    if (!this.#working) void this.#work()
  }

  /** Nothing is told any more. */
  end(): void {
    this.#ended = true
    this.#next = undefined
  }

  async #work(): Promise<void> {
    this.#working = true
    while (this.#next !== undefined) {
      const { question } = this.#next
      this.#next = undefined
      const said = await this.#ask(question).then(
        (answer): Asked<T> => ({ answer, asking: this.#next !== undefined }),
        (reason: unknown): Asked<T> => ({ trouble: troubleOf(reason), asking: this.#next !== undefined }),
      )
      this.#say(said)
    }
    this.#working = false
  }

  #say(asked: Asked<T>): void {
    this.#asked = asked
    if (!this.#ended) this.#tell(asked)
  }
}

function troubleOf(reason: unknown): { text: string; hint?: string } {
  const text = reason instanceof Error ? reason.message : String(reason)
  const hint = reason instanceof Error && 'hint' in reason && typeof reason.hint === 'string' ? reason.hint : ''
  return { text, ...(hint === '' ? {} : { hint }) }
}
