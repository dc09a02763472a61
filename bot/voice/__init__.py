"""Voice notes to text, on this machine: a worker process that decodes and listens, and the way to it.

ear       the way to the worker: one recording at a time, with an end to it
worker    the process: a recording in, what was heard out
decode    any recording to numbers (PyAV)
pieces    a long one cut where nobody speaks
whisper   the ear that is trusted more
"""
