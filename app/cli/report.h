// What the reports of the command line have in common.
#pragma once

#include "app/cli/yard_access.h"
#include "models/domain/answers/headline.h"

#include <QJsonObject>

#include <optional>

namespace rickyard::app {

// The books and the moment that a report is about.
struct Subject {
    WorkspacePtr yard;
    domain::Instant now;
    [[nodiscard]] const domain::Books &books() const { return yard->books(); }
};

// An exit code when the report cannot begin.
std::optional<int> beginReport(CliCall &call, Subject &subject);
void sayHeadline(QTextStream &out, const QString &title, const domain::Headline &headline);
void sayJson(QTextStream &out, const QJsonObject &object);
// The day in the yard's zone, ISO 8601; a dash without one.
QString dayText(const domain::Books &books, std::optional<domain::Instant> time);
QString heatText(const domain::Books &books, domain::Heat heat);

} // namespace rickyard::app
