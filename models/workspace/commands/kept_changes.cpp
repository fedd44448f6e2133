#include "models/workspace/commands/kept_changes.h"

#include "models/domain/answers/answers.h"
#include "models/domain/answers/field_words.h"
#include "models/domain/answers/wording.h"

#include <QSet>

namespace rickyard::commands {

using domain::Books;
using domain::CookChange;
using domain::FieldKind;
using domain::FieldSpec;
using domain::Instant;
using domain::RecordId;
using domain::Row;
using domain::TableId;
using domain::TableSpec;
using domain::Value;
using workspace::Change;
using workspace::ChangeSet;

namespace {

bool hangsOnACook(TableId table)
{
    return table == TableId::Feed || table == TableId::CookTemperature ||
           table == TableId::CookNote || table == TableId::Trace;
}

RecordId cookOf(const std::optional<Row> &row)
{
    return row ? domain::integerOr(domain::valueOf(*row, QStringLiteral("cook")), 0) : 0;
}

class ChangeKeeper
{
public:
    ChangeKeeper(const Books &books, const ChangeSet &changes, Instant now, const IdSource &nextId)
        : m_books(books), m_locale(domain::localeOf(domain::wordingOf(books))), m_now(now),
          m_nextId(nextId)
    {
        for (const Change &c : changes)
            if (c.table == TableId::Cook && !c.after)
                m_going.insert(c.id);
    }

    void look(const Change &change)
    {
        if (change.table == TableId::Cook) {
            if (change.before && change.after && wasOut(change.id))
                keepFields(change.id, {}, *change.before, *change.after);
            return;
        }
        if (!hangsOnACook(change.table))
            return;
        const RecordId from = cookOf(change.before);
        const RecordId to = cookOf(change.after);
        if (from == to && wasOut(to)) {
            keepFields(to, subject(*change.before), *change.before, *change.after);
            return;
        }
        if (wasOut(from))
            keep(from, subject(*change.before), whole(*change.before), {});
        if (wasOut(to) && change.table != TableId::Trace)
            keep(to, subject(*change.after), {}, whole(*change.after));
    }
    [[nodiscard]] const ChangeSet &kept() const { return m_kept; }

private:
    [[nodiscard]] bool wasOut(RecordId cook) const
    {
        const auto found = m_books.cooks.constFind(cook);
        return found != m_books.cooks.constEnd() && found->fireOut && !m_going.contains(cook);
    }

    void keep(RecordId cook, const QString &what, const QString &before, const QString &after)
    {
        CookChange row;
        row.id = m_nextId(TableId::CookChange);
        row.cook = cook;
        row.time = m_now;
        row.what = what;
        row.before = before;
        row.after = after;
        m_kept.append({TableId::CookChange, row.id, std::nullopt, domain::toRow(row)});
    }

    void keepFields(RecordId cook, const QString &subject, const Row &before, const Row &after)
    {
        const TableSpec &spec = domain::specOf(before.table);
        for (int i = 0; i < spec.fields.size(); ++i) {
            const FieldSpec &field = spec.fields.at(i);
            const Value &was = before.values.at(i);
            const Value &is = after.values.at(i);
            if (was == is || field.derived || field.kind == FieldKind::Typed)
                continue;
            QString from = words(field, was);
            QString to = words(field, is);
            if (from == to) {
                from = finely(field, was);
                to = finely(field, is);
            }
            const QString label = field.label;
            keep(cook,
                 subject.isEmpty() ? label
                                   : QString(subject + QStringLiteral(", ") +
                                             label.left(1).toLower() + label.mid(1)),
                 from, to);
        }
    }

    [[nodiscard]] QString words(const FieldSpec &field, const Value &value) const
    {
        return domain::displayText(m_books, field, value, m_locale);
    }
    [[nodiscard]] QString words(const Row &row, const char *key) const
    {
        const TableSpec &spec = domain::specOf(row.table);
        const int at = spec.indexOf(QLatin1String(key));
        return words(spec.fields.at(at), row.values.at(at));
    }
    // For two values that read alike: seconds, and more digits.
    [[nodiscard]] QString finely(const FieldSpec &field, const Value &value) const
    {
        const qint64 base = domain::integerOr(value, 0);
        if (field.kind == FieldKind::Time && !domain::isMissing(value))
            return m_locale.toString(domain::toLocal(m_books, Instant::ofSeconds(base)),
                                     QStringLiteral("ddd d MMM yyyy, h:mm:ss AP"));
        if (field.kind == FieldKind::Quantity && !domain::isMissing(value)) {
            const domain::Unit &unit = domain::unitFor(field, m_books.yard().metric);
            return domain::formatQuantity(base, unit, m_locale, unit.decimals + 4);
        }
        return words(field, value);
    }

    [[nodiscard]] QString clock(const Row &row) const
    {
        const Value time = domain::valueOf(row, QStringLiteral("time"));
        return m_locale.toString(
            domain::toLocal(m_books, Instant::ofSeconds(domain::integerOr(time, 0))),
            QStringLiteral("ddd h:mm AP"));
    }
    [[nodiscard]] QString subject(const Row &row) const
    {
        switch (row.table) {
        case TableId::Feed:
            return QStringLiteral("Feed of %1").arg(clock(row));
        case TableId::CookTemperature: {
            const QString probe = words(row, "probe");
            const QString where = probe.isEmpty() ? QString() : QString(QLatin1Char(' ') + probe);
            return QStringLiteral("Temperature of%1 at %2").arg(where, clock(row));
        }
        case TableId::CookNote:
            return QStringLiteral("Note of %1").arg(clock(row));
        default:
            return QStringLiteral("Trace of %1").arg(words(row, "probe"));
        }
    }
    // A record that came or went, in one line.
    [[nodiscard]] QString whole(const Row &row) const
    {
        QStringList parts;
        switch (row.table) {
        case TableId::Feed: {
            const QString pieces = words(row, "pieces");
            parts << QStringLiteral("%1 %2 of %3")
                         .arg(pieces,
                              pieces == QLatin1String("1") ? QStringLiteral("split")
                                                           : QStringLiteral("splits"),
                              words(row, "lot"))
                  << words(row, "weight") << words(row, "note");
            break;
        }
        case TableId::CookTemperature:
            parts << words(row, "temperature");
            break;
        case TableId::CookNote:
            parts << words(row, "kind") << words(row, "text");
            break;
        default:
            parts << QStringLiteral("%1 points").arg(words(row, "points")) << words(row, "source");
            break;
        }
        parts.removeAll(QString());
        return parts.join(QStringLiteral(", "));
    }

    const Books &m_books;
    QLocale m_locale;
    Instant m_now;
    const IdSource &m_nextId;
    QSet<RecordId> m_going;
    ChangeSet m_kept;
};

} // namespace

ChangeSet withKeptChanges(const Books &books, const ChangeSet &changes, Instant now,
                          const IdSource &nextId)
{
    ChangeKeeper keeper(books, changes, now, nextId);
    for (const Change &change : changes)
        keeper.look(change);
    return ChangeSet(changes + keeper.kept());
}

} // namespace rickyard::commands
