// Choices that more than one table uses.
#pragma once

#include "models/domain/records/schema.h"

namespace rickyard::domain {

inline QVector<Choice> sellUnitChoices()
{
    return {{QStringLiteral("cord"), QStringLiteral("Cord (128 ft³)")},
            {QStringLiteral("face_cord"), QStringLiteral("Face cord (4 × 8 ft × stick length)")},
            {QStringLiteral("half_cord"), QStringLiteral("Half cord (64 ft³)")},
            {QStringLiteral("quarter_cord"), QStringLiteral("Quarter cord (32 ft³)")},
            {QStringLiteral("cubic_foot"), QStringLiteral("Cubic foot, stacked")},
            {QStringLiteral("pound"), QStringLiteral("Pound, as is")}};
}

} // namespace rickyard::domain
