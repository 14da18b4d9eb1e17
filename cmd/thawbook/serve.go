package main

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/http"
	"os"
	"os/signal"
	"strconv"
	"syscall"
	"time"

	"github.com/spf13/cobra"
)

// usualPort is where the page is looked for first; portsTried is how many from
// there on, when others are busy.
const (
	usualPort  = 7140
	portsTried = 20
)

func newServe(t *terminal) *cobra.Command {
	port := usualPort
	cmd := &cobra.Command{
		Use:   "thawbook",
		Short: "What-if seasons for a small sugarhouse",
		Long: `Lay a maple season out line by line, say how unsure you are of each number, and
see what it will cost, how long it will take and what it will leave.

Without a command, builds what is missing of the page and serves it on this
machine only.`,
		Args: noSuchCommand,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if port < 0 || port > 65535 {
				return commandWrong("--port %d: must be 0 to 65535", port)
			}
			ctx, stop := signal.NotifyContext(cmd.Context(), os.Interrupt, syscall.SIGTERM)
			defer stop()
			return serve(ctx, t, port)
		},
	}
	cmd.Flags().IntVar(&port, "port", usualPort, "the `port` to serve on, or the next free one if it is busy")
	return cmd
}

// serve builds the page and answers on 127.0.0.1 until ctx ends.
func serve(ctx context.Context, t *terminal, port int) error {
	p, err := projectHere()
	if err != nil {
		return err
	}
	if err := p.build(ctx, t.err); err != nil {
		return err
	}
	root, err := os.OpenRoot(p.page())
	if err != nil {
		return cannotServe(err)
	}
	defer root.Close()
	listener, err := listen(port)
	if err != nil {
		return cannotServe(err)
	}
	fmt.Fprintf(t.out, "Thawbook is at http://%s/\nNothing you enter leaves this machine. Ctrl-C stops it.\n", listener.Addr())
	server := &http.Server{Handler: newSite(root.FS()), ReadHeaderTimeout: 10 * time.Second}
	ended := make(chan error, 1)
	go func() { ended <- server.Serve(listener) }()
	select {
	case err := <-ended:
		return cannotServe(err)
	case <-ctx.Done():
		return server.Close()
	}
}

func cannotServe(err error) error {
	return failure{status: statusSheetWrong, message: "the page cannot be served: " + err.Error(), hint: worksWithout}
}

func projectHere() (project, error) {
	dir, err := os.Getwd()
	if err != nil {
		return project{}, err
	}
	return findProject(dir)
}

// listen takes port on this machine alone, or the next free one after it.
func listen(port int) (net.Listener, error) {
	for next := port; ; next++ {
		listener, err := net.Listen("tcp", net.JoinHostPort("127.0.0.1", strconv.Itoa(next)))
		if err == nil {
			return listener, nil
		}
		if !errors.Is(err, syscall.EADDRINUSE) || next == port+portsTried-1 || next == 65535 {
			return nil, err
		}
	}
}
