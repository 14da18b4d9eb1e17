import { pageNames, pageTitles } from '../../state/pages.ts'
import { addressOf } from '../address.ts'
import { useApp } from '../context.ts'

/** The pages of the open sheet, as links along its head. */
export function PageLinks({ name }: { name: string }) {
  const app = useApp()
  const here = app.page.value
  return (
    <nav class="page-links" aria-label="Pages of this sheet">
      <ul>
        {pageNames.map((page) => (
          <li key={page}>
            <a href={addressOf(name, page)} {...(page === here ? { 'aria-current': 'page' as const } : {})}>
              {pageTitles[page]}
            </a>
          </li>
        ))}
      </ul>
    </nav>
  )
}
