@echo off
rem Starts Lengthwise with the Java on the path; JAVA_OPTS goes to it.
java %JAVA_OPTS% -jar "%~dp0..\lengthwise.jar" %*
