// Package partner hands a book over as a workbook that still calculates and
// takes a partner's copy back. It joins the front door and package workbook, and
// stands apart from both so that the page's first module, which holds the front
// door, does not carry the workbook with it.
//
// Taking back never touches the open book. [Review] tells what came back, line by
// line, with what each change would do to the season; [Accept] gives the book
// that some of the changes make.
package partner
