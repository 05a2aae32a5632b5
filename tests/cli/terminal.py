"""Answers questions on a terminal: python3 terminal.py ANSWER|ANSWER… COMMAND…"""
import os, pty, re, select, signal, sys
answers = sys.argv[1].split('|')
pid, fd = pty.fork()
if pid == 0:
    os.execvp(sys.argv[2], sys.argv[2:])
said, seen = b'', 0
while select.select([fd], [], [], 20)[0]:
    try:
        piece = os.read(fd, 4096)
    except OSError:
        break
    if not piece:
        break
    said += piece
    if answers and len(re.findall(rb'\]: ', said)) > seen:
        seen = len(re.findall(rb'\]: ', said))
        os.write(fd, (answers.pop(0) + '\r').encode())
else:
    os.kill(pid, signal.SIGKILL)
status = os.waitstatus_to_exitcode(os.waitpid(pid, 0)[1])
sys.stdout.buffer.write(said)
sys.exit(abs(status))
