package printing

import (
	"context"
	"fmt"

	"tenthpoint/internal/message"
)

// Windows has no command that sends a PDF to a queue. It has the print verb: "ask whichever program
// opens this kind of file to print it". PowerShell invokes it here, with three consequences. The
// file must stay after Send returns, so it is kept in System.Keep. A program that opens PDFs must
// be installed. And no answer comes back, so the receipt is not Certain. Plain text does not need
// another program: Out-Printer prints it and fails loudly when it cannot.
//
// File and printer names reach PowerShell as environment variables, never as part of its program
// text, so that no name can be executed.
const (
	fileVar    = "TENTHPOINT_PRINT_FILE"
	printerVar = "TENTHPOINT_PRINTER"
)

func (s System) sendWindows(ctx context.Context, job Job) (Receipt, error) {
	if job.MIME == Roll {
		return Receipt{}, message.Device.Errorf("%q was not printed: bytes for a receipt printer cannot go through a print queue of Windows. Print to a folder, and copy the file to the printer's port.", job.Name)
	}
	kept, err := Folder{Path: s.Keep}.Send(ctx, job)
	if err != nil {
		return Receipt{}, err
	}
	if _, err := s.powershell(job, kept.Where).run(ctx); err != nil {
		return Receipt{}, message.Device.Errorf("%q was not printed on %s: %w. Check the printer's name, and for a PDF that a program which opens PDFs is installed. The file is kept at %s and can be printed from there.", job.Name, s.printerName(), err, kept.Where)
	}
	return Receipt{Where: kept.Where, Copies: job.Copies, Certain: job.MIME == Text}, nil
}

func (s System) powershell(job Job, path string) command {
	act := s.printVerb()
	if job.MIME == Text {
		act = s.outPrinter()
	}
	script := fmt.Sprintf("$ErrorActionPreference='Stop'; foreach ($n in 1..%d) { %s }", job.Copies, act)
	return command{
		name: "powershell",
		args: []string{"-NoProfile", "-NonInteractive", "-Command", script},
		env:  []string{fileVar + "=" + path, printerVar + "=" + s.Printer},
	}
}

func (s System) printVerb() string {
	if s.Printer == "" {
		return "Start-Process -FilePath $env:" + fileVar + " -Verb Print -WindowStyle Hidden"
	}
	return "Start-Process -FilePath $env:" + fileVar + " -Verb PrintTo -ArgumentList ('\"' + $env:" + printerVar + " + '\"') -WindowStyle Hidden"
}

func (s System) outPrinter() string {
	act := "Get-Content -LiteralPath $env:" + fileVar + " -Encoding UTF8 | Out-Printer"
	if s.Printer == "" {
		return act
	}
	return act + " -Name $env:" + printerVar
}
