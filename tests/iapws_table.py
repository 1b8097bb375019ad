#!/usr/bin/python3
"""Prints tests/published/iapws.csv: IAPWS-IF97 as the library iapws (Debian: python3-iapws) computes it."""
import iapws

print(f"# IAPWS-IF97 by the Python library iapws {iapws.__version__} (J. J. Gomez Romera), class IAPWS97.")
print("# Regenerate from the repository's root: /usr/bin/python3 tests/iapws_table.py > tests/published/iapws.csv")
print("quantity,temperature_K,pressure_Pa,value,unit")


def row(quantity, temperature, pressure, value, unit):
    print(f"{quantity},{temperature:.2f},{pressure},{value:.10g},{unit}")


for celsius in range(5, 200, 10):
    kelvin = celsius + 273.15
    liquid = iapws.IAPWS97(T=kelvin, x=0)
    vapour = iapws.IAPWS97(T=kelvin, x=1)
    row("saturation pressure", kelvin, "nan", liquid.P, "MPa")
    row("saturated liquid enthalpy", kelvin, "nan", liquid.h, "kJ/kg")
    row("saturated liquid density", kelvin, "nan", liquid.rho, "kg/m3")
    row("saturated liquid heat capacity", kelvin, "nan", liquid.cp, "kJ/kg/K")
    row("saturated vapour enthalpy", kelvin, "nan", vapour.h, "kJ/kg")
    row("saturated vapour density", kelvin, "nan", vapour.rho, "kg/m3")

for pascal in (60000, 80000, 101325):
    for celsius in range(100, 201, 25):
        kelvin = celsius + 273.15
        steam = iapws.IAPWS97(T=kelvin, P=pascal / 1e6)
        row("steam enthalpy", kelvin, pascal, steam.h, "kJ/kg")
        row("steam density", kelvin, pascal, steam.rho, "kg/m3")
        row("steam heat capacity", kelvin, pascal, steam.cp, "kJ/kg/K")
