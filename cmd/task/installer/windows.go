package installer

import (
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"tenthpoint/cmd/task/toolchain"
)

// windowsTarget is what the window is built for on Windows, and mingw the compiler of its C parts.
var windowsTarget = target{"windows", "amd64"}

const mingw = "x86_64-w64-mingw32-"

// windows makes an archive and an installer with both programs, each with icon and version inside.
func (r *release) windows() error {
	folder := filepath.Join(r.work, "windows")
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return err
	}
	icon := filepath.Join(r.work, "tenthpoint.ico")
	if err := r.icon(icon); err != nil {
		return err
	}
	cgo := append([]string{"CC=" + mingw + "gcc", "CXX=" + mingw + "g++"}, toolchain.WithCgo...)
	if err := r.windowsProgram(folder, "tenthpoint", cgo, "-H windowsgui", icon); err != nil {
		return err
	}
	if err := r.windowsProgram(folder, "tenth", toolchain.WithoutCgo, "", icon); err != nil {
		return err
	}
	licence, err := os.ReadFile("LICENSE")
	if err != nil {
		return err
	}
	if err := put(filepath.Join(folder, "LICENSE.txt"), []byte(strings.ReplaceAll(string(licence), "\n", "\r\n"))); err != nil {
		return err
	}
	inside, err := r.contents(filepath.Join(folder, "tenthpoint.exe"), filepath.Join(folder, "tenth.exe"))
	if err != nil {
		return err
	}
	if err := put(filepath.Join(folder, "tenthpoint.spdx"), inside); err != nil {
		return err
	}
	if err := r.dated(folder); err != nil {
		return err
	}
	archive := r.result(fmt.Sprintf("tenthpoint-%s-%s.zip", r.version, windowsTarget))
	if err := os.RemoveAll(archive); err != nil {
		return err
	}
	if err := r.run(folder, "zip", "-q", "-X", "-r", archive, "."); err != nil {
		return err
	}
	return r.nsis(folder, icon)
}

// windowsProgram builds one program. Its resources are a file beside its text only while it is
// built: the linker takes every such file there.
func (r *release) windowsProgram(folder, name string, env []string, linker, icon string) error {
	pkg := filepath.Join("cmd", name)
	resources := filepath.Join(pkg, "resources_windows_amd64.syso")
	script, err := r.filled("windows.rc", "@ICON@", icon, "@PROGRAM@", name,
		"@COMMAS@", strings.ReplaceAll(r.version, ".", ","))
	if err != nil {
		return err
	}
	file := filepath.Join(r.work, name+".rc")
	if err := put(file, []byte(script)); err != nil {
		return err
	}
	defer func() { _ = os.Remove(resources) }()
	if err := r.run("", mingw+"windres", "-c", "65001", file, "-O", "coff", "-o", resources); err != nil {
		return err
	}
	return r.build(windowsTarget, env, "./"+pkg, filepath.Join(folder, windowsTarget.program(name)), linker)
}

// nsis makes the installer.
func (r *release) nsis(folder, icon string) error {
	path := r.result(fmt.Sprintf("tenthpoint-%s-%s-installer.exe", r.version, windowsTarget))
	script, err := r.filled("windows.nsi", "@OUT@", path, "@ICON@", icon, "@FOLDER@", folder)
	if err != nil {
		return err
	}
	file := filepath.Join(r.work, "windows.nsi")
	if err := put(file, []byte(script)); err != nil {
		return err
	}
	return r.run("", "makensis", "-V2", "-INPUTCHARSET", "UTF8", file)
}

// iconSizes are the sizes, in pixels, that Windows looks for.
var iconSizes = []int{16, 24, 32, 48, 64, 128, 256}

// icon draws the program's icon in each size and writes them into one file.
func (r *release) icon(path string) error {
	var pictures [][]byte
	for _, size := range iconSizes {
		png := filepath.Join(r.work, fmt.Sprintf("icon-%d.png", size))
		if err := r.run("", "rsvg-convert", "-w", strconv.Itoa(size), "-h", strconv.Itoa(size), "-o", png, iconFile); err != nil {
			return err
		}
		picture, err := os.ReadFile(png)
		if err != nil {
			return err
		}
		pictures = append(pictures, picture)
	}
	return put(path, iconOf(iconSizes, pictures))
}
