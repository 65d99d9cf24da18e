@echo off
rem Starts Dropline. Beside a pom.xml it first builds what has changed; in an unpacked release it needs only Java.
setlocal DisableDelayedExpansion
set "HOME_DIR=%~dp0"
set "HOME_DIR=%HOME_DIR:~0,-1%"

set "JAVA_EXE="
if defined JAVA_HOME call :tryjava "%JAVA_HOME%\bin\java.exe"
if not defined JAVA_EXE for /f "delims=" %%J in ('where java.exe 2^>nul') do call :tryjava "%%J"
if not defined JAVA_EXE for /d %%D in (
    "%ProgramFiles%\Eclipse Adoptium\*"
    "%ProgramFiles%\Java\*"
    "%ProgramFiles%\Microsoft\jdk*"
    "%ProgramFiles%\Amazon Corretto\*"
    "%ProgramFiles%\Zulu\*"
    "%ProgramFiles%\BellSoft\*"
    "%LocalAppData%\Programs\Eclipse Adoptium\*"
    "%UserProfile%\scoop\apps\openjdk\current*"
) do call :tryjava "%%~D\bin\java.exe"
if not defined JAVA_EXE goto nojava

set "LIB=%HOME_DIR%\lib"
if not exist "%HOME_DIR%\pom.xml" goto run

set "TARGET=%HOME_DIR%\harness\target"
set "LIB=%TARGET%\app\lib"
set "SEEN=%TARGET%\seen"
if not exist "%LIB%\" goto build
if not exist "%SEEN%\" goto build
rem robocopy compares the sources' names, sizes and times with those last built; with /L it only looks.
call :compare "%SEEN%" /L
if not defined CHANGED goto run

:build
if not exist "%JAVA_BASE%\bin\javac.exe" goto nojdk
set "MAVEN_CMD="
for /f "delims=" %%M in ('where mvn.cmd 2^>nul') do if not defined MAVEN_CMD set "MAVEN_CMD=%%M"
if not defined MAVEN_CMD if defined MAVEN_HOME if exist "%MAVEN_HOME%\bin\mvn.cmd" set "MAVEN_CMD=%MAVEN_HOME%\bin\mvn.cmd"
if not defined MAVEN_CMD if defined M2_HOME if exist "%M2_HOME%\bin\mvn.cmd" set "MAVEN_CMD=%M2_HOME%\bin\mvn.cmd"
if not defined MAVEN_CMD for /d %%D in (
    "%ProgramFiles%\apache-maven*"
    "%ProgramFiles%\Apache\*maven*"
    "%ProgramFiles%\Apache Maven\*"
    "%ProgramFiles%\Apache Software Foundation\*maven*"
    "%ProgramFiles%\Maven*"
    "%ProgramFiles%\Maven\*"
    "%ProgramData%\chocolatey\lib\maven\apache-maven*"
    "%UserProfile%\scoop\apps\maven\current*"
    "%SystemDrive%\apache-maven*"
) do if exist "%%~D\bin\mvn.cmd" set "MAVEN_CMD=%%~D\bin\mvn.cmd"
if not defined MAVEN_CMD goto nomaven

if exist "%SEEN%\" (
    >&2 echo dropline: sources have changed, building...
) else (
    >&2 echo dropline: building for the first time, which may take a few minutes...
)
if exist "%LIB%\" rmdir /s /q "%LIB%"
if exist "%SEEN%\" rmdir /s /q "%SEEN%"
if exist "%SEEN%.new\" rmdir /s /q "%SEEN%.new"
if not exist "%TARGET%\" mkdir "%TARGET%"
call :compare "%SEEN%.new"
rem The strict checks are for contributors (mvn verify); they would only slow this build down.
pushd "%HOME_DIR%"
set "CALLERS_JAVA_HOME=%JAVA_HOME%"
set "JAVA_HOME=%JAVA_BASE%"
call "%MAVEN_CMD%" -q -B -DskipTests -Dstrict=off -pl harness -am package >"%TARGET%\build.log" 2>&1 <nul
set "BUILD_RESULT=%ERRORLEVEL%"
set "JAVA_HOME=%CALLERS_JAVA_HOME%"
popd
if not "%BUILD_RESULT%"=="0" goto buildfailed
move "%SEEN%.new" "%SEEN%" >nul

:run
rem Dropline has Java write its classes into this archive, from which it starts sooner; without it nothing is amiss.
for %%H in ("%HOME_DIR%") do set "ARCHIVE=%LocalAppData%\Dropline\%%~nxH.jsa"
"%JAVA_EXE%" "@%HOME_DIR%\java.options" "-XX:SharedArchiveFile=%ARCHIVE%" "-Ddropline.archive=%ARCHIVE%" "-Ddropline.home=%HOME_DIR%" -cp "%LIB%\*" dropline.harness.cli.Main %*
exit /b %ERRORLEVEL%

rem Sets JAVA_EXE and JAVA_BASE if the argument is a Java of version 17 or newer and none was found before.
:tryjava
if defined JAVA_EXE exit /b 0
if not exist "%~1" exit /b 0
set "SPEC="
set "BASE="
for /f "tokens=1,2* delims== " %%A in ('^""%~1" -XshowSettings:properties -version 2^>^&1^"') do (
    if "%%A"=="java.specification.version" set "SPEC=%%B"
    if "%%A"=="java.home" if "%%C"=="" (set "BASE=%%B") else set "BASE=%%B %%C"
)
if not defined SPEC exit /b 0
for /f "delims=." %%V in ("%SPEC%") do set "SPEC=%%V"
if %SPEC% LSS 17 exit /b 0
set "JAVA_EXE=%~1"
set "JAVA_BASE=%BASE%"
exit /b 0

rem Compares the sources with their copy in the first argument, and brings the copy up to date unless /L is given.
:compare
set "CHANGED="
call :mirror "%HOME_DIR%" "%~1\root" "pom.xml" %2
call :mirror "%HOME_DIR%\.mvn" "%~1\mvn" "*" %2
for %%M in (protocol bus-sim harness) do (
    call :mirror "%HOME_DIR%\%%M" "%~1\%%M\pom" "pom.xml" %2
    call :mirror "%HOME_DIR%\%%M\src\main" "%~1\%%M\main" "*" /E %2
)
exit /b 0

:mirror
robocopy "%~1" "%~2" "%~3" /PURGE /NJH /NJS /NP /NS /NC /NDL /NFL /R:1 /W:1 %4 %5 >nul
if errorlevel 1 set "CHANGED=yes"
exit /b 0

:nojava
>&2 echo Dropline needs Java 17 or newer, and found none that works.
>&2 echo Install a JDK 17 or newer, for instance from https://adoptium.net, then open a new window.
>&2 echo If Java is already there, put its bin folder on PATH or set JAVA_HOME to its folder.
if "%~1"=="" pause
exit /b 3

:nojdk
>&2 echo Dropline has to be built, and the Java found is a runtime without a compiler: "%JAVA_BASE%"
>&2 echo Install the development kit (JDK), version 17 or newer, for instance from https://adoptium.net.
if "%~1"=="" pause
exit /b 3

:nomaven
>&2 echo Dropline's first start builds it, and for that it needs Maven 3.8.7 or newer, which was not found.
>&2 echo Unpack it from https://maven.apache.org, for instance into "%ProgramFiles%", and put its bin folder on PATH.
if "%~1"=="" pause
exit /b 3

:buildfailed
>&2 type "%TARGET%\build.log"
>&2 echo dropline: the build failed; what Maven said stands above.
if "%~1"=="" pause
exit /b 3
