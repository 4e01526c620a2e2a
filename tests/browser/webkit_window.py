"""A window of WebKitGTK that keeps its data in a folder, told line by line what to do.

It is run by the system's own Python, which has GTK; nothing else here imports it. WebKit's driver
would not do: what it starts forgets everything when it ends.
"""

import json
import sys
from pathlib import Path

import gi

gi.require_version("Gtk", "3.0")
gi.require_version("Soup", "3.0")
gi.require_version("WebKit2", "4.1")

from gi.repository import GLib, Gtk, Soup, WebKit2  # noqa: E402

A_YEAR_S = 31_536_000
BLANK = "about:blank"
going_to = []


def answer(**told):
    sys.stdout.write(json.dumps(told) + "\n")
    sys.stdout.flush()


def make_view(folder):
    manager = WebKit2.WebsiteDataManager(
        base_data_directory=str(folder / "data"), base_cache_directory=str(folder / "cache")
    )
    context = WebKit2.WebContext.new_with_website_data_manager(manager)
    context.set_preferred_languages(["en-GB"])
    context.get_cookie_manager().set_persistent_storage(
        str(folder / "cookies"), WebKit2.CookiePersistentStorage.SQLITE
    )
    view = WebKit2.WebView.new_with_context(context)
    view.connect("load-changed", on_load)
    view.connect("load-failed", on_failure)
    return view


def on_load(view, event):
    # Each page is loaded anew: by way of a blank one, or another place in it would be no load.
    if event == WebKit2.LoadEvent.FINISHED and view.get_uri() != BLANK:
        answer(value=None)
    elif event == WebKit2.LoadEvent.FINISHED:
        view.load_uri(going_to.pop())


def on_failure(_view, _event, address, fault):
    answer(fault=f"{address}: {fault.message}")
    return True


def on_result(view, result):
    try:
        value = view.call_async_javascript_function_finish(result)
    except GLib.Error as fault:
        answer(fault=fault.message)
    else:
        answer(value=json.loads(value.to_string()))


def on_cookie(manager, result):
    manager.add_cookie_finish(result)
    answer(value=None)


def on_line(_stdin, _condition, view):
    line = sys.stdin.readline()
    if not line:
        Gtk.main_quit()
        return False
    told = json.loads(line)
    if "open" in told:
        going_to.append(told["open"])
        view.load_uri(BLANK)
    elif "cookie" in told:
        # It would take none that is for HTTPS only from a server without it.
        name, value, host = told["cookie"]
        cookie = Soup.Cookie.new(name, value, host, "/", A_YEAR_S)
        cookies = view.get_context().get_cookie_manager()
        cookies.add_cookie(cookie, None, on_cookie)
    else:
        body = f"return JSON.stringify((await (async () => {{ {told['run']} }})()) ?? null);"
        view.call_async_javascript_function(body, -1, None, None, None, None, on_result)
    return True


def main():
    view = make_view(Path(sys.argv[1]))
    window = Gtk.Window()
    window.set_default_size(360, 740)
    window.add(view)
    window.show_all()
    GLib.io_add_watch(sys.stdin, GLib.PRIORITY_DEFAULT, GLib.IO_IN | GLib.IO_HUP, on_line, view)
    Gtk.main()


if __name__ == "__main__":
    main()
