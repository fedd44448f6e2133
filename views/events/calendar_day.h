// The chosen day of the calendar in words: what is on it, when, and what clashes, with the way to
// each record.
#pragma once

#include "views/events/calendar_items.h"

#include <QWidget>

class QPushButton;
class QVBoxLayout;

namespace rickyard::views {

class TextLabel;

class CalendarDay : public QWidget
{
    Q_OBJECT

public:
    explicit CalendarDay(bool readOnly, QWidget *parent = nullptr);
    void setDay(QDate day, QDate today, const QVector<CalendarItem> &items);
    [[nodiscard]] QString plainText() const;

Q_SIGNALS:
    void opened(const rickyard::domain::Link &link);
    void addAsked(QDate day);

private:
    void addItem(const CalendarItem &item);

    QDate m_day;
    TextLabel *m_heading;
    QPushButton *m_add;
    QVBoxLayout *m_column;
    QStringList m_said;
};

} // namespace rickyard::views
