#include "models/items/record_model.h"

#include "models/items/wording.h"

#include <algorithm>

namespace rickyard::items {

using domain::FieldKind;
using domain::FieldSpec;
using domain::RecordId;
using domain::Row;
using domain::TableId;
using workspace::Change;
using workspace::Changes;

namespace {
// From here on one reset is cheaper for every view than a signal a row.
constexpr int kResetFrom = 200;
} // namespace

RecordModel::RecordModel(workspace::Workspace &workspace, TableId table, QObject *parent)
    : QAbstractTableModel(parent), m_workspace(workspace), m_table(table),
      m_locale(QStringLiteral("en_US"))
{
    const auto &fields = domain::specOf(table).fields;
    for (int i = 0; i < fields.size(); ++i)
        if (fields.at(i).kind != FieldKind::Typed && fields.at(i).kind != FieldKind::Blob)
            m_fields << i;
    reload();
    connect(&workspace, &workspace::Workspace::changed, this, &RecordModel::follow);
}

void RecordModel::setFilter(Filter filter)
{
    beginResetModel();
    m_filter = std::move(filter);
    reload();
    endResetModel();
}

bool RecordModel::accepted(const Row &row) const
{
    return !m_filter || m_filter(row);
}

void RecordModel::reload()
{
    m_ids.clear();
    const auto all = domain::idsOf(m_workspace.books(), m_table);
    for (RecordId id : all)
        if (!m_filter || accepted(*domain::rowOf(m_workspace.books(), m_table, id)))
            m_ids << id;
}

void RecordModel::follow(const Changes &changes)
{
    int mine = 0;
    bool referred = false;
    for (const Change &c : changes.set) {
        mine += c.table == m_table ? 1 : 0;
        for (const FieldSpec &f : domain::specOf(m_table).fields)
            referred = referred || (f.kind == FieldKind::Reference && f.refersTo == c.table);
        // Units and the time zone show in every list.
        referred = referred || c.table == TableId::Yard;
    }
    if (mine >= kResetFrom) {
        beginResetModel();
        reload();
        endResetModel();
        return;
    }
    for (const Change &c : changes.set)
        if (c.table == m_table)
            followOne(c);
    if (referred && !m_ids.isEmpty())
        Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
}

void RecordModel::followOne(const Change &change)
{
    const auto it = std::lower_bound(m_ids.cbegin(), m_ids.cend(), change.id);
    const int row = static_cast<int>(it - m_ids.cbegin());
    const bool shown = it != m_ids.cend() && *it == change.id;
    const bool wanted = change.after && accepted(*change.after);
    if (shown && !wanted) {
        beginRemoveRows({}, row, row);
        m_ids.removeAt(row);
        endRemoveRows();
    } else if (!shown && wanted) {
        beginInsertRows({}, row, row);
        m_ids.insert(row, change.id);
        endInsertRows();
    } else if (shown) {
        Q_EMIT dataChanged(index(row, 0), index(row, columnCount() - 1));
    }
}

int RecordModel::rowOfId(RecordId id) const
{
    const auto it = std::lower_bound(m_ids.cbegin(), m_ids.cend(), id);
    return it != m_ids.cend() && *it == id ? static_cast<int>(it - m_ids.cbegin()) : -1;
}

int RecordModel::columnOfField(const QString &key) const
{
    return static_cast<int>(m_fields.indexOf(domain::specOf(m_table).indexOf(key)));
}

bool RecordModel::listedAtFirst(int column) const
{
    return domain::specOf(m_table).fields.at(m_fields.at(column)).inList;
}

int RecordModel::rowCount(const QModelIndex &parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_ids.size());
}

int RecordModel::columnCount(const QModelIndex &parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_fields.size());
}

QVariant RecordModel::data(const QModelIndex &index, int role) const
{
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    const RecordId id = m_ids.at(index.row());
    if (role == RecordIdRole)
        return QVariant::fromValue<qint64>(id);
    const FieldSpec &field = domain::specOf(m_table).fields.at(m_fields.at(index.column()));
    if (role == FieldKeyRole)
        return field.key;
    if (role == Qt::TextAlignmentRole) {
        const bool number = field.kind == FieldKind::Quantity || field.kind == FieldKind::Count;
        return QVariant(number ? (Qt::AlignRight | Qt::AlignVCenter)
                               : (Qt::AlignLeft | Qt::AlignVCenter));
    }
    if (role != Qt::DisplayRole && role != SortRole && role != Qt::AccessibleTextRole)
        return {};
    const domain::Value value =
        domain::valueAt(m_workspace.books(), m_table, id, m_fields.at(index.column()));
    if (role == SortRole)
        return sortValue(m_workspace.books(), field, value);
    const QString text = displayText(m_workspace.books(), field, value, m_locale);
    if (role == Qt::DisplayRole)
        return text;
    return QString(field.label + QStringLiteral(": ") +
                   (text.isEmpty() ? QStringLiteral("not recorded") : text));
}

QVariant RecordModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal || section < 0 || section >= m_fields.size())
        return {};
    const FieldSpec &field = domain::specOf(m_table).fields.at(m_fields.at(section));
    if (role == Qt::DisplayRole)
        return field.label;
    if (role == FieldKeyRole)
        return field.key;
    if (role == Qt::TextAlignmentRole) {
        const bool number = field.kind == FieldKind::Quantity || field.kind == FieldKind::Count;
        return QVariant(number ? (Qt::AlignRight | Qt::AlignVCenter)
                               : (Qt::AlignLeft | Qt::AlignVCenter));
    }
    return {};
}

} // namespace rickyard::items
