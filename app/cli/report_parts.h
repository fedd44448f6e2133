// What the reports of the command line have in common: the yard and the moment they are about, a
// headline in words, JSON on the output.
#pragma once

#include "app/cli/yard_access.h"
#include "models/domain/answers/headline.h"

#include <QJsonObject>
#include <QTextStream>

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

} // namespace rickyard::app
