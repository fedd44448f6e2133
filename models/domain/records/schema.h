// Every record table is described once, field by field. Storage, undo, CSV, lists and forms all
// read this description, so that a new field is one line in one place (and one migration).
#pragma once

#include "models/domain/records/value.h"

#include <QMap>
#include <QString>
#include <QVector>

#include <functional>

namespace rickyard::domain {

enum class TableId {
    Yard,
    Species,
    Supplier,
    Offer,
    WoodOrder,
    Event,
    Lot,
    MoistureReading,
    OvenTest,
    Pit,
    PlannedCook,
    Cook,
    Feed,
    Movement,
    CookTemperature,
    CookNote,
    CookChange,
    Trace,
    Weather,
    UpkeepTask,
    Visit,
    CheckReading,
    Finding,
    Photo,
    AshLoad,
    Override,
    KnownGood,
    CrewTime,
    BusyTime,
    ImportProfile,
};
constexpr int kTableCount = static_cast<int>(TableId::ImportProfile) + 1;

enum class FieldKind {
    Text,
    LongText,
    Choice,
    Flag,
    Count,
    Quantity,
    Time,
    Date,
    Reference,
    Pieces,
    Stacks,
    Blob,
    Typed,
};

// What becomes of a record when the one it refers to is deleted.
enum class OnDelete { Refuse, Cascade, Clear };

struct Choice {
    QString key;   // in the file
    QString label; // for a person
};

struct FieldSpec {
    QString key;   // column name in SQL and CSV
    QString label; // for a person
    FieldKind kind = FieldKind::Text;
    Dimension dimension = Dimension::Plain; // of Quantity and Pieces
    QString preferredUnit;                  // key of the unit shown; empty: the system's default
    bool required = false;
    std::optional<qint64> minimum; // base units, inclusive
    std::optional<qint64> maximum;
    QVector<Choice> choices;
    TableId refersTo = TableId::Yard;
    OnDelete onDelete = OnDelete::Refuse;
    QString help;         // one line under the field
    QString section;      // heading in forms; empty: the first section
    Value fallback;       // what a new form starts with
    bool inList = false;  // shown as a column by default
    bool derived = false; // kept by the program, not typed
};

struct TableSpec {
    TableId id = TableId::Yard;
    QString key;        // SQL table and CSV file name
    QString singular;   // "delivery"
    QString plural;     // "deliveries"
    QString titleField; // key of the field that names a record, or empty
    QVector<FieldSpec> fields;

    [[nodiscard]] int indexOf(const QString &fieldKey) const
    {
        for (int i = 0; i < fields.size(); ++i)
            if (fields.at(i).key == fieldKey)
                return i;
        return -1;
    }
};

// A record without its C++ type: values in the order of TableSpec::fields.
struct Row {
    TableId table = TableId::Yard;
    RecordId id = 0;
    QVector<Value> values;

    bool operator==(const Row &) const = default;
};

// Defined in tables.cpp; parents come before children.
const TableSpec &specOf(TableId table);
const QVector<TableId> &tablesInOrder();
std::optional<TableId> tableFromKey(const QString &key);

Value valueOf(const Row &row, const QString &fieldKey);
void setValue(Row &row, const QString &fieldKey, const Value &value);
Row emptyRow(TableId table); // fallbacks filled in

// Binds the fields of R to its spec. Builders read like a table of contents.
template <class R>
class Binder
{
public:
    using Getter = std::function<Value(const R &)>;
    using Setter = std::function<void(R &, const Value &)>;

    TableSpec spec;

    Binder(TableId id, const char *key, const char *singular, const char *plural, const char *title)
    {
        spec = {id,
                QString::fromUtf8(key),
                QString::fromUtf8(singular),
                QString::fromUtf8(plural),
                QString::fromUtf8(title),
                {}};
    }
    Binder &section(const char *heading)
    {
        m_section = QString::fromUtf8(heading);
        return *this;
    }
    template <class T>
    Binder &field(FieldKind kind, const char *key, const char *label, T R::*member)
    {
        FieldSpec f;
        f.key = QString::fromUtf8(key);
        f.label = QString::fromUtf8(label);
        f.kind = kind;
        f.section = m_section;
        spec.fields.append(f);
        m_get.append([member](const R &r) { return toValue(r.*member); });
        m_set.append([member](R &r, const Value &v) { fromValue(v, r.*member); });
        return *this;
    }
    Binder &text(const char *key, const char *label, QString R::*m)
    {
        return field(FieldKind::Text, key, label, m);
    }
    Binder &longText(const char *key, const char *label, QString R::*m)
    {
        return field(FieldKind::LongText, key, label, m);
    }
    template <class T>
    Binder &quantity(const char *key, const char *label, T R::*m, const char *unit = "")
    {
        field(FieldKind::Quantity, key, label, m);
        last().dimension = dimensionOf(static_cast<T *>(nullptr));
        last().preferredUnit = QString::fromUtf8(unit);
        return *this;
    }
    template <class T>
    Binder &count(const char *key, const char *label, T R::*m)
    {
        return field(FieldKind::Count, key, label, m).atLeast(0);
    }
    Binder &flag(const char *key, const char *label, bool R::*m)
    {
        field(FieldKind::Flag, key, label, m).required();
        last().fallback = qint64{0};
        return *this;
    }
    template <class T>
    Binder &time(const char *key, const char *label, T R::*m)
    {
        return field(FieldKind::Time, key, label, m);
    }
    Binder &date(const char *key, const char *label, QDate R::*m)
    {
        return field(FieldKind::Date, key, label, m);
    }
    template <class T>
    Binder &reference(const char *key, const char *label, T R::*m, TableId to, OnDelete onDelete)
    {
        field(FieldKind::Reference, key, label, m);
        last().refersTo = to;
        last().onDelete = onDelete;
        return *this;
    }
    // An enum member whose enumerators stand in the order of the choices; stored by key.
    template <class E>
    Binder &choice(const char *key, const char *label, E R::*m, QVector<Choice> choices)
    {
        FieldSpec f;
        f.key = QString::fromUtf8(key);
        f.label = QString::fromUtf8(label);
        f.kind = FieldKind::Choice;
        f.section = m_section;
        f.choices = choices;
        f.required = true;
        f.fallback = choices.first().key;
        spec.fields.append(f);
        m_get.append(
            [m, choices](const R &r) -> Value { return choices.at(static_cast<int>(r.*m)).key; });
        m_set.append([m, choices](R &r, const Value &v) {
            for (int i = 0; i < choices.size(); ++i)
                if (choices.at(i).key == textOf(v))
                    r.*m = static_cast<E>(i);
        });
        return *this;
    }
    Binder &moistureList(const char *key, const char *label, PieceMoistures R::*m)
    {
        field(FieldKind::Pieces, key, label, m);
        last().dimension = Dimension::Moisture;
        return *this;
    }
    Binder &stackList(const char *key, const char *label, StackSizes R::*m)
    {
        field(FieldKind::Stacks, key, label, m);
        last().dimension = Dimension::Length;
        return *this;
    }
    // Modifiers of the field just added.
    Binder &required()
    {
        last().required = true;
        return *this;
    }
    Binder &atLeast(qint64 v)
    {
        last().minimum = v;
        return *this;
    }
    Binder &atMost(qint64 v)
    {
        last().maximum = v;
        return *this;
    }
    template <Dimension D>
    Binder &between(Quantity<D> low, Quantity<D> high)
    {
        return atLeast(low.base()).atMost(high.base());
    }
    Binder &help(const char *words)
    {
        last().help = QString::fromUtf8(words);
        return *this;
    }
    Binder &startsWith(const Value &v)
    {
        last().fallback = v;
        return *this;
    }
    Binder &listed()
    {
        last().inList = true;
        return *this;
    }
    Binder &derived()
    {
        last().derived = true;
        return *this;
    }
    // Every table ends with what was typed: a JSON object, field key -> text as typed.
    Binder &typed(QString R::*m)
    {
        field(FieldKind::Typed, "typed", "As typed", m);
        return *this;
    }

    [[nodiscard]] Value value(const R &r, int field) const { return m_get.at(field)(r); }
    [[nodiscard]] Row toRow(const R &r) const
    {
        Row row{spec.id, r.id, {}};
        row.values.reserve(m_get.size());
        for (const Getter &get : m_get)
            row.values.append(get(r));
        return row;
    }
    [[nodiscard]] R fromRow(const Row &row) const
    {
        R r;
        r.id = row.id;
        for (int i = 0; i < m_set.size() && i < row.values.size(); ++i)
            m_set.at(i)(r, row.values.at(i));
        return r;
    }

private:
    template <Dimension D>
    static Dimension dimensionOf(Quantity<D> *)
    {
        return D;
    }
    template <Dimension D>
    static Dimension dimensionOf(std::optional<Quantity<D>> *)
    {
        return D;
    }
    FieldSpec &last() { return spec.fields.last(); }

    QString m_section;
    QVector<Getter> m_get;
    QVector<Setter> m_set;
};

} // namespace rickyard::domain
