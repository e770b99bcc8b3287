# SPDX-License-Identifier: GPL-3.0-or-later
"""Writes the starter lists as one C file: embed-lists.py OUTPUT INPUT.md...

The id of each follows from its file name, so that it stays the same in every store."""
import os
import sys
import uuid


def quoted(line):
    text = ''
    for byte in line.encode('utf-8'):
        char = chr(byte)
        text += char if 32 <= byte < 127 and char not in '"\\?' else '\\%03o' % byte
    return '"' + text + '"'


with open(sys.argv[1], 'w', encoding='ascii') as out:
    out.write('#include "ff-starter-lists.h"\n\nconst FfStarterList ff_starter_lists[] = {\n')
    for path in sys.argv[2:]:
        name = os.path.splitext(os.path.basename(path))[0]
        own = uuid.uuid5(uuid.NAMESPACE_URL, 'https://fieldfare.org/lists/' + name)
        with open(path, encoding='utf-8') as text:
            lines = [quoted(line) for line in text]
        out.write('  { "%s", "%s",\n    %s },\n' % (own, name, '\n    '.join(lines)))
    out.write('};\n\nconst unsigned int ff_n_starter_lists = %d;\n' % (len(sys.argv) - 2))
