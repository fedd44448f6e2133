// A new event from an earlier one: which (the same place first), on which day, with its cooks at
// their times and what clashes there; then it is written in one step.
#pragma once

#include "models/domain/plan/event_series.h"
#include "views/page.h"

#include <QDialog>

class QCheckBox;
class QComboBox;
class QDateEdit;
class QLineEdit;
class QPushButton;
class QTimeEdit;
class QVBoxLayout;

namespace rickyard::views {

class NoticeBar;
class TextLabel;

// Events to copy from, the likeliest first: `like` itself (0: none), those at its place, then the
// others; of each the ones held before the ones to come, the latest first.
QVector<domain::RecordId> eventsToCopy(const domain::Books &books, domain::RecordId like,
                                       domain::Instant now);

class CopyDialog : public QDialog
{
    Q_OBJECT

public:
    // `like` stands first when it is given; an invalid day takes the same weekday in the first
    // week that is free of events.
    CopyDialog(PageContext &context, domain::RecordId like, QDate day, QWidget *parent = nullptr);
    [[nodiscard]] QString previewText() const;

Q_SIGNALS:
    void made(qint64 event);

private:
    void buildFields(QVBoxLayout *column);
    void buildActs(QVBoxLayout *column);
    void chooseSource();
    void showCopy();
    void write();
    [[nodiscard]] domain::RecordId source() const;
    [[nodiscard]] domain::EventCopy copy() const;
    [[nodiscard]] QDate freeDayLike(const domain::Event &event) const;

    PageContext &m_context;
    QDate m_wantedDay;
    QStringList m_lines;
    QComboBox *m_source = nullptr;
    QLineEdit *m_name = nullptr;
    QDateEdit *m_day = nullptr;
    QTimeEdit *m_clock = nullptr;
    QCheckBox *m_asCooked = nullptr;
    TextLabel *m_sum = nullptr;
    QVBoxLayout *m_list = nullptr;
    NoticeBar *m_notice = nullptr;
    QPushButton *m_make = nullptr;
};

} // namespace rickyard::views
