#include "models/domain/records/books.h"

#include <QDateTime>
#include <QTimeZone>

#include <array>

namespace rickyard::domain {

namespace {

// What can be done with a shelf without knowing its record's type.
struct ShelfOps {
    const TableSpec *spec;
    std::function<bool(const Books &, RecordId)> contains;
    std::function<std::optional<Row>(const Books &, RecordId)> row;
    std::function<Value(const Books &, RecordId, int)> value;
    std::function<QVector<RecordId>(const Books &)> ids;
    std::function<qsizetype(const Books &)> count;
    std::function<RecordId(const Books &)> highest;
    std::function<void(Books &, const Row &)> put;
    std::function<void(Books &, RecordId)> drop;
};

template <class R>
ShelfOps entry(Shelf<R> Books::*shelf)
{
    return {&binderOf<R>().spec,
            [shelf](const Books &b, RecordId id) { return (b.*shelf).contains(id); },
            [shelf](const Books &b, RecordId id) -> std::optional<Row> {
                const auto it = (b.*shelf).constFind(id);
                if (it == (b.*shelf).constEnd())
                    return std::nullopt;
                return toRow(*it);
            },
            [shelf](const Books &b, RecordId id, int field) -> Value {
                const auto it = (b.*shelf).constFind(id);
                if (it == (b.*shelf).constEnd())
                    return std::monostate{};
                return binderOf<R>().value(*it, field);
            },
            [shelf](const Books &b) { return QVector<RecordId>((b.*shelf).keys()); },
            [shelf](const Books &b) { return (b.*shelf).size(); },
            [shelf](const Books &b) {
                return (b.*shelf).isEmpty() ? RecordId{0} : (b.*shelf).lastKey();
            },
            [shelf](Books &b, const Row &row) { (b.*shelf).insert(row.id, fromRow<R>(row)); },
            [shelf](Books &b, RecordId id) { (b.*shelf).remove(id); }};
}

const std::array<ShelfOps, kTableCount> &allOps()
{
    // In the order of TableId, parents before children.
    static const std::array<ShelfOps, kTableCount> ops = {
        entry<Yard>(&Books::yards),
        entry<Species>(&Books::species),
        entry<Supplier>(&Books::suppliers),
        entry<Offer>(&Books::offers),
        entry<WoodOrder>(&Books::orders),
        entry<Event>(&Books::events),
        entry<Lot>(&Books::lots),
        entry<MoistureReading>(&Books::readings),
        entry<OvenTest>(&Books::ovenTests),
        entry<Pit>(&Books::pits),
        entry<PlannedCook>(&Books::plannedCooks),
        entry<Cook>(&Books::cooks),
        entry<Feed>(&Books::feeds),
        entry<Movement>(&Books::movements),
        entry<CookTemperature>(&Books::temperatures),
        entry<CookNote>(&Books::notes),
        entry<CookChange>(&Books::cookChanges),
        entry<Trace>(&Books::traces),
        entry<Weather>(&Books::weather),
        entry<UpkeepTask>(&Books::tasks),
        entry<Visit>(&Books::visits),
        entry<CheckReading>(&Books::checkReadings),
        entry<Finding>(&Books::findings),
        entry<Photo>(&Books::photos),
        entry<AshLoad>(&Books::ashLoads),
        entry<Override>(&Books::overrides),
        entry<KnownGood>(&Books::knownGood),
        entry<CrewTime>(&Books::crewTimes),
        entry<BusyTime>(&Books::busyTimes),
        entry<ImportProfile>(&Books::importProfiles),
    };
    return ops;
}

const ShelfOps &ops(TableId table)
{
    return allOps().at(static_cast<size_t>(table));
}

} // namespace

const TableSpec &specOf(TableId table)
{
    return *ops(table).spec;
}

const QVector<TableId> &tablesInOrder()
{
    static const QVector<TableId> order = [] {
        QVector<TableId> all;
        for (int i = 0; i < kTableCount; ++i)
            all << static_cast<TableId>(i);
        return all;
    }();
    return order;
}

std::optional<TableId> tableFromKey(const QString &key)
{
    for (TableId table : tablesInOrder())
        if (specOf(table).key == key)
            return table;
    return std::nullopt;
}

Value valueOf(const Row &row, const QString &fieldKey)
{
    const int i = specOf(row.table).indexOf(fieldKey);
    return i < 0 || i >= row.values.size() ? Value(std::monostate{}) : row.values.at(i);
}

void setValue(Row &row, const QString &fieldKey, const Value &value)
{
    const int i = specOf(row.table).indexOf(fieldKey);
    if (i >= 0 && i < row.values.size())
        row.values[i] = value;
}

Row emptyRow(TableId table)
{
    Row row{table, 0, {}};
    for (const FieldSpec &field : specOf(table).fields) {
        // Texts and lists are empty rather than missing.
        const bool text = field.kind == FieldKind::Text || field.kind == FieldKind::LongText ||
                          field.kind == FieldKind::Typed || field.kind == FieldKind::Pieces ||
                          field.kind == FieldKind::Stacks;
        row.values << (isMissing(field.fallback) && text ? Value(QString()) : field.fallback);
    }
    return row;
}

bool contains(const Books &books, TableId table, RecordId id)
{
    return ops(table).contains(books, id);
}
std::optional<Row> rowOf(const Books &books, TableId table, RecordId id)
{
    return ops(table).row(books, id);
}
Value valueAt(const Books &books, TableId table, RecordId id, int field)
{
    return ops(table).value(books, id, field);
}
QVector<RecordId> idsOf(const Books &books, TableId table)
{
    return ops(table).ids(books);
}
qsizetype countOf(const Books &books, TableId table)
{
    return ops(table).count(books);
}
RecordId highestId(const Books &books, TableId table)
{
    return ops(table).highest(books);
}
void put(Books &books, const Row &row)
{
    ops(row.table).put(books, row);
}
void drop(Books &books, TableId table, RecordId id)
{
    ops(table).drop(books, id);
}

QString titleOf(const Books &books, TableId table, RecordId id)
{
    const auto row = rowOf(books, table, id);
    if (!row)
        return QStringLiteral("(deleted)");
    const TableSpec &spec = specOf(table);
    const QString title =
        spec.titleField.isEmpty() ? QString() : textOf(valueOf(*row, spec.titleField));
    if (!title.isEmpty())
        return title;
    // No name of its own: the first reference and the first day say what it is.
    QString about;
    QString day;
    for (int i = 0; i < spec.fields.size(); ++i) {
        const FieldSpec &f = spec.fields.at(i);
        if (f.kind == FieldKind::Reference && about.isEmpty() && !isMissing(row->values.at(i)))
            about = titleOf(books, f.refersTo, integerOr(row->values.at(i), 0));
        if (f.kind == FieldKind::Time && day.isEmpty() && !isMissing(row->values.at(i)))
            day = QDateTime::fromSecsSinceEpoch(integerOr(row->values.at(i), 0),
                                                QTimeZone(books.yard().timeZone.toLatin1()))
                      .date()
                      .toString(Qt::ISODate);
    }
    QString text = spec.singular;
    if (!about.isEmpty())
        text += QStringLiteral(" · ") + about;
    if (!day.isEmpty())
        text += QStringLiteral(" · ") + day;
    return text;
}

QVector<Dependant> dependantsOf(const Books &books, TableId table, RecordId id)
{
    QVector<Dependant> found;
    for (TableId child : tablesInOrder()) {
        const TableSpec &spec = specOf(child);
        for (int i = 0; i < spec.fields.size(); ++i) {
            const FieldSpec &f = spec.fields.at(i);
            if (f.kind != FieldKind::Reference || f.refersTo != table)
                continue;
            for (RecordId childId : idsOf(books, child)) {
                if (integerOr(valueAt(books, child, childId, i), 0) == id)
                    found.append({child, childId, f.key, f.onDelete});
            }
        }
    }
    return found;
}

} // namespace rickyard::domain
