package place

import "syscall"

// networkDrives are the file systems on other computers, by their statfs number.
var networkDrives = map[uint32]string{
	0x6969: "NFS", 0x517b: "SMB", 0xff534d42: "CIFS", 0xfe534d42: "SMB2",
	0x564c: "NCP", 0x5346414f: "AFS", 0x73757245: "Coda", 0x00c36400: "Ceph", 0x013111a8: "IBRIX", 0x0bd00bd0: "Lustre",
}

// networkDrive returns the kind of network drive of a folder; nothing for a local disk, or where
// that is unknown.
func networkDrive(folder string) string {
	var fs syscall.Statfs_t
	if err := syscall.Statfs(folder, &fs); err != nil {
		return ""
	}
	return networkDrives[uint32(fs.Type)]
}
