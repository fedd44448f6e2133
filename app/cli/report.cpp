#include "app/cli/report.h"

#include "app/cli/text_table.h"
#include "models/domain/answers/answers.h"
#include "models/domain/answers/wording.h"

#include <QJsonDocument>

namespace rickyard::app {

using domain::Books;
using domain::Headline;
using domain::Instant;

std::optional<int> beginReport(CliCall &call, Subject &subject)
{
    // A date that cannot be read is a slip of usage whether or not the yard opens.
    if (!momentOf(call, QStringLiteral("UTC")))
        return Usage;
    subject.yard = openForReading(call);
    if (!subject.yard)
        return CannotOpen;
    subject.now = *momentOf(call, subject.books().yard().timeZone);
    return std::nullopt;
}

void sayHeadline(QTextStream &out, const QString &title, const Headline &headline)
{
    out << title << " (" << domain::standingKey(headline.standing) << ")\n"
        << wrapped(headline.plainSentence(), 2);
    TextTable table;
    bool assumed = false;
    for (const domain::Reason &reason : headline.reasons) {
        assumed = assumed || reason.assumption;
        table.row({reason.label,
                   QString(reason.value + (reason.assumption ? QStringLiteral(" *") : QString()))});
    }
    out << table.text(4);
    if (assumed)
        out << "    * rests on something that is not recorded\n";
    out << "\n";
}

void sayJson(QTextStream &out, const QJsonObject &object)
{
    out << QString::fromUtf8(QJsonDocument(object).toJson(QJsonDocument::Indented));
}

QString dayText(const Books &books, std::optional<Instant> time)
{
    if (!time)
        return QStringLiteral("–");
    const QDate day = domain::dayOf(*time, domain::zoneOf(domain::wordingOf(books)));
    return day.toString(Qt::ISODate);
}

QString heatText(const Books &books, domain::Heat heat)
{
    return domain::heatWords(heat, domain::wordingOf(books));
}

} // namespace rickyard::app
