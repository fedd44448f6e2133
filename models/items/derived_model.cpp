#include "models/items/derived_model.h"

#include "models/items/record_model.h"

namespace rickyard::items {

DerivedModel::DerivedModel(QVector<Column> columns, QObject *parent)
    : QAbstractTableModel(parent), m_columns(std::move(columns))
{
}

void DerivedModel::setRows(QVector<DerivedRow> rows)
{
    beginResetModel();
    m_rows = std::move(rows);
    endResetModel();
}

domain::Link DerivedModel::linkAt(int row) const
{
    return m_rows.value(row).link;
}
domain::Standing DerivedModel::standingAt(int row) const
{
    return m_rows.value(row).standing;
}

int DerivedModel::rowCount(const QModelIndex &parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

int DerivedModel::columnCount(const QModelIndex &parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_columns.size());
}

QVariant DerivedModel::data(const QModelIndex &index, int role) const
{
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    const DerivedRow &row = m_rows.at(index.row());
    const DerivedCell cell = row.cells.value(index.column());
    switch (role) {
    case Qt::DisplayRole:
        return cell.text;
    case SortRole:
        return cell.sort.isValid() ? cell.sort : QVariant(cell.text.toLower());
    case RecordIdRole:
        return QVariant::fromValue<qint64>(row.link.id);
    case Qt::AccessibleTextRole:
        return cell.accessible.isEmpty()
                   ? QString(m_columns.at(index.column()).title + QStringLiteral(": ") + cell.text)
                   : cell.accessible;
    case Qt::TextAlignmentRole:
        return headerData(index.column(), Qt::Horizontal, role);
    default:
        return {};
    }
}

QVariant DerivedModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal || section < 0 || section >= m_columns.size())
        return {};
    if (role == Qt::DisplayRole)
        return m_columns.at(section).title;
    if (role == Qt::TextAlignmentRole)
        return QVariant(m_columns.at(section).number ? (Qt::AlignRight | Qt::AlignVCenter)
                                                     : (Qt::AlignLeft | Qt::AlignVCenter));
    return {};
}

} // namespace rickyard::items
