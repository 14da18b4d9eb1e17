/** Where the reckoner and its loader lie, relative to the page; set by the build. */
declare const __PARTS__: { reckoner: string; packed: string; loader: string }
