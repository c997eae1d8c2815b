#!/usr/bin/python3
"""Times other sparse libraries on the matrices that the benchmarks have written.

Debian's packages: see install_references.sh. Usage: sparse_reference.py DIRECTORY, which holds NAME.k and NAME.m (see
MatrixFile.cs). Writes DIRECTORY/reference.csv: name, library, task, seconds, megabytes of the factor, value.
The value of a solution is the residual, that of a factorization its number of entries, that of modes the lowest frequency.
"""
import ctypes
import os
import platform
import sys
import time

os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
import numpy as np
import scipy
import scipy.sparse as sp
import scipy.sparse.linalg as spla

directory = sys.argv[1]
rows = []


def read(path):
    with open(path, "rb") as file:
        n, count = np.fromfile(file, np.int64, 2)
        starts = np.fromfile(file, np.int32, n + 1)
        at = np.fromfile(file, np.int32, count)
        values = np.fromfile(file, np.float64, count)
    return sp.csc_matrix((values, at, starts), shape=(n, n))


def full(lower):
    return (lower + sp.tril(lower, -1).T).tocsc()


def least(run, seconds=3.0, most=200):
    best, result, begin = np.inf, None, time.perf_counter()
    for _ in range(most):
        start = time.perf_counter()
        result = run()
        best = min(best, time.perf_counter() - start)
        if time.perf_counter() - begin > seconds:
            break
    return best, result


def row(name, library, task, seconds, megabytes="", value=""):
    rows.append(f"{name},{library},{task},{seconds:.6g},{megabytes},{value}")
    print(rows[-1], flush=True)


class Sparse(ctypes.Structure):
    _fields_ = [("nrow", ctypes.c_size_t), ("ncol", ctypes.c_size_t), ("nzmax", ctypes.c_size_t),
                ("p", ctypes.c_void_p), ("i", ctypes.c_void_p), ("nz", ctypes.c_void_p), ("x", ctypes.c_void_p), ("z", ctypes.c_void_p),
                ("stype", ctypes.c_int), ("itype", ctypes.c_int), ("xtype", ctypes.c_int), ("dtype", ctypes.c_int),
                ("sorted", ctypes.c_int), ("packed", ctypes.c_int)]


class Dense(ctypes.Structure):
    _fields_ = [("nrow", ctypes.c_size_t), ("ncol", ctypes.c_size_t), ("nzmax", ctypes.c_size_t), ("d", ctypes.c_size_t),
                ("x", ctypes.c_void_p), ("z", ctypes.c_void_p), ("xtype", ctypes.c_int), ("dtype", ctypes.c_int)]


class Factor(ctypes.Structure):
    _fields_ = [("n", ctypes.c_size_t), ("minor", ctypes.c_size_t), ("Perm", ctypes.c_void_p), ("ColCount", ctypes.c_void_p),
                ("IPerm", ctypes.c_void_p), ("nzmax", ctypes.c_size_t), ("p", ctypes.c_void_p), ("i", ctypes.c_void_p), ("x", ctypes.c_void_p),
                ("z", ctypes.c_void_p), ("nz", ctypes.c_void_p), ("next", ctypes.c_void_p), ("prev", ctypes.c_void_p),
                ("nsuper", ctypes.c_size_t), ("ssize", ctypes.c_size_t), ("xsize", ctypes.c_size_t)]


class Cholmod:
    """CHOLMOD (supernodal Cholesky, ordering by AMD or METIS, whichever fills less) through its C interface."""

    def __init__(self, lower):
        lib = self.lib = ctypes.CDLL("libcholmod.so.3")
        for name in ("cholmod_analyze", "cholmod_solve"):
            getattr(lib, name).restype = ctypes.c_void_p
        self.common = ctypes.create_string_buffer(65536)
        lib.cholmod_start(self.common)
        self.keep = [lower.indptr.astype(np.int32), lower.indices.astype(np.int32), lower.data.astype(np.float64)]
        n = lower.shape[0]
        p, i, x = (array.ctypes.data for array in self.keep)
        self.a = Sparse(n, n, lower.nnz, p, i, None, x, None, -1, 0, 1, 0, 1, 1)
        self.factor = None

    def analyze(self):
        if self.factor:
            self.lib.cholmod_free_factor(ctypes.byref(ctypes.c_void_p(self.factor)), self.common)
        self.factor = self.lib.cholmod_analyze(ctypes.byref(self.a), self.common)

    def factorize(self):
        if not self.lib.cholmod_factorize(ctypes.byref(self.a), ctypes.c_void_p(self.factor), self.common):
            raise RuntimeError("CHOLMOD failed")

    def size(self):
        head = ctypes.cast(self.factor, ctypes.POINTER(Factor)).contents
        return max(head.xsize, head.nzmax)

    def solve(self, b):
        b = np.ascontiguousarray(b, np.float64)
        dense = Dense(len(b), 1, len(b), len(b), b.ctypes.data, None, 1, 0)
        address = self.lib.cholmod_solve(0, ctypes.c_void_p(self.factor), ctypes.byref(dense), self.common)
        head = ctypes.cast(address, ctypes.POINTER(Dense)).contents
        x = np.ctypeslib.as_array(ctypes.cast(head.x, ctypes.POINTER(ctypes.c_double)), (len(b),)).copy()
        self.lib.cholmod_free_dense(ctypes.byref(ctypes.c_void_p(address)), self.common)
        return x


def residual(k, x, b):
    return f"{np.linalg.norm(k @ x - b) / np.linalg.norm(b):.1e}"


def lowest(values):
    return f"{np.sqrt(np.min(values)) / (2 * np.pi):.9g}"


def measure(name):
    lower = read(f"{directory}/{name}.k")
    k, m = full(lower), full(read(f"{directory}/{name}.m"))
    n = k.shape[0]
    b = k @ np.ones(n)
    once = n > 50000

    try:
        library = Cholmod(lower)
    except OSError:
        library = None
    if library:
        seconds, _ = least(library.analyze, 0 if once else 3)
        row(name, "CHOLMOD", "order", seconds)
        seconds, _ = least(library.factorize)
        row(name, "CHOLMOD", "factor", seconds, f"{library.size() * 8 / 1e6:.4g}", library.size())
        seconds, x = least(lambda: library.solve(b))
        row(name, "CHOLMOD", "solve", seconds, "", residual(k, x, b))
        operator = spla.LinearOperator((n, n), library.solve, dtype=float)
        seconds, values = least(lambda: spla.eigsh(k, 12, m, sigma=0, OPinv=operator, return_eigenvectors=False), 0 if once else 3)
        row(name, "SciPy eigsh on CHOLMOD", "12 modes", seconds, "", lowest(values))

    # Without METIS its ordering leaves too much fill for the largest matrix.
    if once:
        return
    factor = lambda: spla.splu(k, permc_spec="MMD_AT_PLUS_A", diag_pivot_thresh=0.0, options={"SymmetricMode": True})
    seconds, lu = least(factor)
    entries = lu.L.nnz + lu.U.nnz
    row(name, "SciPy splu", "order and factor", seconds, f"{entries * 12 / 1e6:.4g}", entries)
    seconds, x = least(lambda: lu.solve(b))
    row(name, "SciPy splu", "solve", seconds, "", residual(k, x, b))
    seconds, values = least(lambda: spla.eigsh(k, 12, m, sigma=0, return_eigenvectors=False))
    row(name, "SciPy eigsh", "factor and 12 modes", seconds, "", lowest(values))


row("", f"Python {platform.python_version()}; NumPy {np.__version__}; SciPy {scipy.__version__}", "versions", 0)
for file in sorted(os.listdir(directory), key=lambda f: os.path.getsize(f"{directory}/{f}")):
    if file.endswith(".k"):
        measure(file[:-2])
with open(f"{directory}/reference.csv", "w", encoding="utf-8") as out:
    out.write("\n".join(rows) + "\n")
