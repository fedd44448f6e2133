// Any table of the yard as an item model: one row a record, one column a field.
#pragma once

#include "models/workspace/workspace.h"

#include <QAbstractTableModel>
#include <QLocale>

namespace rickyard::items {

enum ItemRole {
    RecordIdRole = Qt::UserRole + 1, // qint64
    SortRole,                        // see items/wording.h
    FieldKeyRole,                    // column's field key (header data too)
};

class RecordModel : public QAbstractTableModel
{
    Q_OBJECT

public:
    using Filter = std::function<bool(const domain::Row &)>;

    RecordModel(workspace::Workspace &workspace, domain::TableId table, QObject *parent = nullptr);

    // Shows only matching records, e.g. the feeds of one cook. Empty: all.
    void setFilter(Filter filter);

    [[nodiscard]] domain::TableId table() const { return m_table; }
    [[nodiscard]] domain::RecordId idAt(int row) const { return m_ids.value(row); }
    [[nodiscard]] int rowOfId(domain::RecordId id) const;
    [[nodiscard]] int columnOfField(const QString &key) const;
    // Columns that a list shows at first.
    [[nodiscard]] bool listedAtFirst(int column) const;

    [[nodiscard]] int rowCount(const QModelIndex &parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex &parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex &index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                      int role) const override;

private:
    void reload();
    void follow(const workspace::Changes &changes);
    void followOne(const workspace::Change &change);
    [[nodiscard]] bool accepted(const domain::Row &row) const;

    workspace::Workspace &m_workspace;
    domain::TableId m_table;
    QVector<int> m_fields;           // column -> index in the spec
    QVector<domain::RecordId> m_ids; // ascending
    Filter m_filter;
    QLocale m_locale;
};

} // namespace rickyard::items
