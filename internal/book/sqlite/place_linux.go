package sqlite

import "syscall"

// networkDrives are the kinds of file systems that lie on another computer, by the
// number that statfs gives them.
var networkDrives = map[uint32]string{
	0x6969: "NFS", 0x517b: "SMB", 0xff534d42: "CIFS", 0xfe534d42: "SMB2",
	0x564c: "NCP", 0x5346414f: "AFS", 0x73757245: "Coda", 0x00c36400: "Ceph", 0x013111a8: "IBRIX", 0x0bd00bd0: "Lustre",
}

// networkDrive is the kind of network drive that a folder lies on; nothing for a
// disk of this computer, or where that cannot be told.
func networkDrive(folder string) string {
	var fs syscall.Statfs_t
	if err := syscall.Statfs(folder, &fs); err != nil {
		return ""
	}
	return networkDrives[uint32(fs.Type)]
}
