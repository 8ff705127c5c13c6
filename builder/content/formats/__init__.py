"""The tables that say what each kind of file may hold.

The reader and the editors' JSON Schemas both come from them.
"""
