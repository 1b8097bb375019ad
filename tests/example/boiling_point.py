# Where a bath boils: the installed library used from Python, which needs nothing compiled. SI units.
#
#     python3 boiling_point.py /usr/local/lib/libboilback.so
import ctypes
import sys


class Mixture(ctypes.Structure):  # boil_mixture
    _fields_ = [("water", ctypes.c_double), ("salt", ctypes.c_double * 3)]


class Conditions(ctypes.Structure):  # boil_conditions
    _fields_ = [("pressure_Pa", ctypes.c_double), ("saturation_K", ctypes.c_double), ("elevation_factor", ctypes.c_double)]


boil = ctypes.CDLL(sys.argv[1])
boil.boil_outcome_text.restype = ctypes.c_char_p
boil.boil_mixture_of.restype = Mixture
boil.boil_mixture_of.argtypes = [ctypes.POINTER(ctypes.c_double), ctypes.c_double]
boil.boil_conditions_at.restype = Conditions
boil.boil_conditions_at.argtypes = [ctypes.c_double, ctypes.c_double]

air = boil.boil_conditions_at(101325, 1)
bath = boil.boil_mixture_of((ctypes.c_double * 3)(0.80, 0.15, 0.05), 0.55)
boiling_point_K = ctypes.c_double()
outcome = boil.boil_solution_boiling_point(ctypes.byref(air), ctypes.byref(bath), ctypes.byref(boiling_point_K))
if outcome != 0:
    sys.exit(boil.boil_outcome_text(outcome).decode())
print(f"boils at {boiling_point_K.value:.2f} K")
