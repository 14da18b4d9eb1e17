/** A file name like this one that is not taken: the name itself, or with the first number from 2 that is free. */
export function freeName(name: string, taken: (name: string) => boolean): string {
  const dot = name.lastIndexOf('.')
  const [stem, ending] = dot > 0 ? [name.slice(0, dot), name.slice(dot)] : [name, '']
  const bare = stem.replace(/-\d+$/, '') || stem
  let free = name
  for (let n = 2; taken(free); n++) free = `${bare}-${n}${ending}`
  return free
}
