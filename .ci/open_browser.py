"""Opens the browser at an address as soon as somebody answers there."""

import sys
import threading
import webbrowser
from urllib.error import URLError
from urllib.request import urlopen

ATTEMPTS = 100
BETWEEN_S = 0.2

address = sys.argv[1]
pause = threading.Event()
for _ in range(ATTEMPTS):
    try:
        urlopen(address, timeout=2).close()
    except (URLError, OSError):
        pause.wait(BETWEEN_S)
    else:
        webbrowser.open(address)
        break
