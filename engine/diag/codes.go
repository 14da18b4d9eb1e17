package diag

// Code names one kind of mistake. Codes are stable: scripts may test for them.
type Code string

// Codes of the sheet file.
const (
	FileTooLarge  Code = "file-too-large" // more bytes than a sheet may have
	YAMLSyntax    Code = "yaml-syntax"    // the file does not parse as YAML
	YAMLTooDeep   Code = "yaml-too-deep"  // nested deeper than a sheet may be
	YAMLAlias     Code = "yaml-alias"     // anchors, aliases and tags have no place in a sheet
	NotASheet     Code = "not-a-sheet"    // "thawbook: 1" is missing or not first of its kind
	SheetTooNew   Code = "sheet-too-new"  // written by a later form of the program
	UnknownKey    Code = "unknown-key"    // a key the sheet file does not have
	DuplicateKey  Code = "duplicate-key"  // one key given twice
	MissingKey    Code = "missing-key"    // a key that must be there is not
	WrongKind     Code = "wrong-kind"     // text where a number must stand, and the like
	BadID         Code = "bad-id"         // an id that formulas could not name
	DuplicateID   Code = "duplicate-id"   // one id on two lines
	SeveralKinds  Code = "several-kinds"  // two of is, guess, records, choose, formula
	NoKind        Code = "no-kind"        // none of them
	MissingUnit   Code = "missing-unit"   // a number without a unit
	UnknownUnit   Code = "unknown-unit"   // a unit text that cannot be read
	OutOfBounds   Code = "out-of-bounds"  // a number below its floor or above its ceiling
	MissingCell   Code = "missing-cell"   // a row lacks a value for a column
	UnknownColumn Code = "unknown-column" // a row or formula names a column the table lacks
	UnknownTable  Code = "unknown-table"  // a choice among a table that is not there
	UnknownChoice Code = "unknown-choice" // a name the choice does not have
	FromMissing   Code = "from-missing"   // the sheet a scenario is taken from cannot be read
	FromCircle    Code = "from-circle"    // scenarios taken from each other
	ChangeUnknown Code = "change-unknown" // a change to a line that is not there
	DropUnknown   Code = "drop-unknown"   // a drop of a line that is not there
	EditUnknown   Code = "edit-unknown"   // an edit of a line or key that is not there
	TooMany       Code = "too-many"       // more lines, rows, records or seasons than may be
)

// Codes of guesses.
const (
	GuessOrder      Code = "guess-order"      // low, likely and high out of order
	GuessUnfit      Code = "guess-unfit"      // three numbers the shape cannot carry
	RecordsFew      Code = "records-few"      // too few records to draw from
	MovesUnknown    Code = "moves-unknown"    // moves_with names no guess
	MovesCircle     Code = "moves-circle"     // guesses that move with each other in a circle
	MovesImpossible Code = "moves-impossible" // rank correlations that cannot hold together
)

// Codes of formulas.
const (
	FormulaTooLong  Code = "formula-too-long" // more characters than a formula may have
	FormulaTooDeep  Code = "formula-too-deep" // nested deeper than a formula may be
	FormulaSyntax   Code = "formula-syntax"   // does not parse
	Refused         Code = "refused"          // a construct formulas do not have
	UnknownName     Code = "unknown-name"     // no line, table or let of that name
	UnknownFunction Code = "unknown-function" // no function of that name
	WrongArguments  Code = "wrong-arguments"  // too many or too few arguments
	UnitMismatch    Code = "unit-mismatch"    // two sides of an operator with different dimensions
	WrongUnit       Code = "wrong-unit"       // an argument, or the whole, has another dimension than wanted
	NotANumber      Code = "not-a-number"     // a yes or no, a choice or a column where a number is needed
	Circle          Code = "circle"           // formulas that wait for each other
	WaitsFor        Code = "waits-for"        // a line whose inputs cannot be reckoned
)

// Codes of a run: warnings that travel beside values.
const (
	NotFinite  Code = "not-finite"   // a division by zero, a logarithm of nothing
	OutOfRange Code = "out-of-range" // a function asked beyond what its source covers
	FewSeasons Code = "few-seasons"  // too few seasons for the tails to mean much
)

// Codes of questions asked of a sheet.
const (
	BadQuestion Code = "bad-question"  // a question that cannot be asked as it stands
	DoesNotHang Code = "does-not-hang" // an outcome that does not hang on the line asked about
	NoneMarked  Code = "none-marked"   // no line or row is marked for what is asked
	LadderFalls Code = "ladder-falls"  // a smaller size costs less by volume than a larger one
	MixNotWhole Code = "mix-not-whole" // shares of a mix that do not come to 100 %

	NotComparable Code = "not-comparable" // sheets that cannot be set side by side
)

// Codes of a workbook that comes back.
const (
	NotAWorkbook     Code = "not-a-workbook"     // no zip, or a zip of something else
	WorkbookLocked   Code = "workbook-locked"    // encrypted with a password
	WorkbookDamaged  Code = "workbook-damaged"   // cut short, or not well formed inside
	WorkbookTooLarge Code = "workbook-too-large" // more bytes, parts or unpacked bytes than may be
	MacrosDropped    Code = "macros-dropped"     // it carries programs, which are neither run nor kept
	OutsideLinks     Code = "outside-links"      // it links to other files, which are not followed
	ReadInPart       Code = "read-in-part"       // more cells than are read
	MarksLost        Code = "marks-lost"         // the hidden list or the marks of our cells are gone
	WrongPlan        Code = "wrong-plan"         // a workbook that holds no plan of this sheet
	CellNotRead      Code = "cell-not-read"      // what stands in a cell of ours cannot be understood
)
