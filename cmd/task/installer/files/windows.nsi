; Installs for one person, or for everybody on the computer when started with /AllUsers.
Target amd64-unicode
!define MULTIUSER_EXECUTIONLEVEL Highest
!define MULTIUSER_MUI
!define MULTIUSER_INSTALLMODE_COMMANDLINE
!define MULTIUSER_INSTALLMODE_INSTDIR "Tenthpoint"
!define MULTIUSER_USE_PROGRAMFILES64
!define MULTIUSER_INSTALLMODE_DEFAULT_CURRENTUSER
!define MULTIUSER_INSTALLMODE_INSTDIR_REGISTRY_KEY "Software\Tenthpoint"
!define MULTIUSER_INSTALLMODE_INSTDIR_REGISTRY_VALUENAME "Folder"
!define MULTIUSER_INSTALLMODE_DEFAULT_REGISTRY_KEY "Software\Tenthpoint"
!define MULTIUSER_INSTALLMODE_DEFAULT_REGISTRY_VALUENAME "Mode"
!include MultiUser.nsh
!include MUI2.nsh

Name "Tenthpoint"
OutFile "@OUT@"
BrandingText "Tenthpoint @VERSION@"
!define MUI_ICON "@ICON@"
!define MUI_UNICON "@ICON@"
!define LISTED "Software\Microsoft\Windows\CurrentVersion\Uninstall\Tenthpoint"
!define BOOKS "Software\Classes\Tenthpoint.Book"

!insertmacro MUI_PAGE_LICENSE "@FOLDER@/LICENSE.txt"
!insertmacro MULTIUSER_PAGE_INSTALLMODE
!insertmacro MUI_PAGE_DIRECTORY
!insertmacro MUI_PAGE_INSTFILES
!insertmacro MUI_UNPAGE_CONFIRM
!insertmacro MUI_UNPAGE_INSTFILES
!insertmacro MUI_LANGUAGE "English"
!insertmacro MUI_LANGUAGE "French"
!insertmacro MUI_LANGUAGE "Spanish"

Function .onInit
  !insertmacro MULTIUSER_INIT
FunctionEnd

Function un.onInit
  !insertmacro MULTIUSER_UNINIT
FunctionEnd

Section "Tenthpoint"
  SetOutPath "$INSTDIR"
  File "@FOLDER@/tenthpoint.exe"
  File "@FOLDER@/tenth.exe"
  File "@FOLDER@/LICENSE.txt"
  File "@FOLDER@/tenthpoint.spdx"
  WriteUninstaller "$INSTDIR\uninstall.exe"
  CreateShortcut "$SMPROGRAMS\Tenthpoint.lnk" "$INSTDIR\tenthpoint.exe"
  WriteRegStr SHCTX "Software\Tenthpoint" "Folder" "$INSTDIR"
  WriteRegStr SHCTX "Software\Tenthpoint" "Mode" "$MultiUser.InstallMode"
  WriteRegStr SHCTX "Software\Classes\.book" "" "Tenthpoint.Book"
  WriteRegStr SHCTX "${BOOKS}" "" "Scale house book"
  WriteRegStr SHCTX "${BOOKS}\DefaultIcon" "" "$INSTDIR\tenthpoint.exe,0"
  WriteRegStr SHCTX "${BOOKS}\shell\open\command" "" '"$INSTDIR\tenthpoint.exe" "%1"'
  WriteRegStr SHCTX "${LISTED}" "DisplayName" "Tenthpoint"
  WriteRegStr SHCTX "${LISTED}" "DisplayVersion" "@VERSION@"
  WriteRegStr SHCTX "${LISTED}" "DisplayIcon" "$INSTDIR\tenthpoint.exe,0"
  WriteRegStr SHCTX "${LISTED}" "UninstallString" '"$INSTDIR\uninstall.exe" /$MultiUser.InstallMode'
  WriteRegDWORD SHCTX "${LISTED}" "NoModify" 1
  WriteRegDWORD SHCTX "${LISTED}" "NoRepair" 1
SectionEnd

; Books, papers and rates are the elevator's own: they stay.
Section "Uninstall"
  Delete "$INSTDIR\tenthpoint.exe"
  Delete "$INSTDIR\tenth.exe"
  Delete "$INSTDIR\LICENSE.txt"
  Delete "$INSTDIR\tenthpoint.spdx"
  Delete "$INSTDIR\uninstall.exe"
  RMDir "$INSTDIR"
  Delete "$SMPROGRAMS\Tenthpoint.lnk"
  DeleteRegKey SHCTX "${LISTED}"
  DeleteRegKey SHCTX "${BOOKS}"
  DeleteRegKey SHCTX "Software\Tenthpoint"
SectionEnd
