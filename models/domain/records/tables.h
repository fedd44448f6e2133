// Choices that more than one table uses.
#pragma once

#include "models/domain/records/schema.h"

namespace rickyard::domain {

inline QVector<Choice> sellUnitChoices()
{
    return {{QStringLiteral("cord"), QStringLiteral("Cord (128 ft³)")},
            {QStringLiteral("half_cord"), QStringLiteral("Half cord (64 ft³)")},
            {QStringLiteral("quarter_cord"), QStringLiteral("Quarter cord (32 ft³)")},
            {QStringLiteral("eighth_cord"), QStringLiteral("Eighth cord (16 ft³)")},
            {QStringLiteral("face_cord"), QStringLiteral("Face cord (4 × 8 ft × stick length)")},
            {QStringLiteral("cubic_foot"), QStringLiteral("Cubic foot, stacked")},
            {QStringLiteral("loose_cubic_foot"), QStringLiteral("Cubic foot, thrown loose")},
            {QStringLiteral("pound"), QStringLiteral("Pound, as is")},
            {QStringLiteral("bundle"), QStringLiteral("Bundle")}};
}

} // namespace rickyard::domain
