# SPDX-License-Identifier: GPL-3.0-or-later
"""Writes the migrations as one C file: embed-sql.py OUTPUT INPUT.sql..."""
import json
import sys

with open(sys.argv[1], 'w', encoding='ascii') as out:
    out.write('#include "ff-store-private.h"\n\nconst char *const ff_migrations[] = {\n')
    for path in sys.argv[2:]:
        with open(path, encoding='ascii') as sql:
            # JSON quotes ASCII text exactly as C does.
            lines = [json.dumps(line) for line in sql]
        out.write('  ' + '\n  '.join(lines) + ',\n')
    out.write('  NULL,\n};\n')
