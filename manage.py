#!/usr/bin/env python
"""The one way in from a shell: `python manage.py NAME`."""

import os
import sys

if __name__ == "__main__":
    os.environ.setdefault("DJANGO_SETTINGS_MODULE", "courses.server.settings")
    try:
        from django.core.management import execute_from_command_line
    except ImportError:
        sys.exit("Django is not installed here. README.md, 'Run it', has the line that sets everything up.")
    execute_from_command_line(sys.argv)
