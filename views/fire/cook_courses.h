// The temperatures of a cook as lines: one a probe (its log and what was typed), and the air.
#pragma once

#include "models/domain/quantities/units.h"
#include "models/domain/records/books.h"

#include <QPointF>

namespace rickyard::views {

struct CookCourse {
    QString name;
    QList<QPointF> points; // hours after lighting, temperature in the unit asked for
};

// Long traces are thinned so that every peak stays. `problems`: blocks that cannot be read.
QVector<CookCourse> probeCourses(const domain::Books &books, const domain::Cook &cook,
                                 const domain::Unit &unit, QStringList &problems);
// Empty when no weather record lies in the cook.
QList<QPointF> outsideCourse(const domain::Books &books, const domain::Cook &cook,
                             domain::Instant end, const domain::Unit &unit);

} // namespace rickyard::views
