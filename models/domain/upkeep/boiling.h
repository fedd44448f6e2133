// At what temperature water boils, by pressure and by height.
#pragma once

#include "models/domain/quantities/quantity.h"

namespace rickyard::domain {

// Pressure of the standard atmosphere at a geopotential height, up to 11 km (ISO 2533:1975; ICAO
// Doc 7488): 101325 Pa (1 - 0.0065 H / 288.15)^(g / (R L)). The day's weather moves the true one
// by about 3 % either way, and the boiling point by about 1 °F.
Pressure standardPressure(Length height);
// Saturation temperature of water: IAPWS-IF97, region 4, backward equation (IAPWS R7-97(2012),
// section 8.2). From 611.2 Pa to the critical point; outside, the end of the range.
Temperature boilingPoint(Pressure pressure);
// At that height in the standard atmosphere.
Temperature boilingPoint(Length height);

} // namespace rickyard::domain
