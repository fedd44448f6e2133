// A task in the list of what falls due: its name and pit, a bar a trigger with its words, the day,
// and how it stands.
#pragma once

#include "models/domain/upkeep/due.h"

#include <QStyledItemDelegate>

namespace rickyard::views {

class DueDelegate : public QStyledItemDelegate
{
    Q_OBJECT

public:
    // What the delegate needs of one task.
    struct Entry {
        QString name;
        QString pit;
        QString due;
        int role = 0; // Role of the pill
        QString state;
        QVector<domain::Meter> meters;
        bool valid = false;
    };
    using Lookup = std::function<Entry(const QModelIndex &)>;

    explicit DueDelegate(Lookup lookup, QObject *parent = nullptr);
    void paint(QPainter *painter, const QStyleOptionViewItem &option,
               const QModelIndex &index) const override;
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem &option,
                                 const QModelIndex &index) const override;

private:
    Lookup m_lookup;
};

} // namespace rickyard::views
