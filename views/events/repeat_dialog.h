// Repeats an event: the pattern, its end, and the days it falls on with what clashes there, before
// anything is written. Each day can be left out.
#pragma once

#include "models/domain/plan/event_series.h"
#include "views/events/repeat_rule.h"
#include "views/page.h"

#include <QDialog>

class QButtonGroup;
class QCheckBox;
class QComboBox;
class QDateEdit;
class QLineEdit;
class QPushButton;
class QSpinBox;
class QVBoxLayout;

namespace rickyard::views {

class FieldRow;
class NoticeBar;
class TextLabel;

class RepeatDialog : public QDialog
{
    Q_OBJECT

public:
    RepeatDialog(PageContext &context, domain::RecordId event, QWidget *parent = nullptr);
    [[nodiscard]] QString rule() const;
    // As shown: a line a day.
    [[nodiscard]] QStringList previewText() const;

Q_SIGNALS:
    void made(const QVector<qint64> &events);

private:
    QWidget *buildFields();
    QWidget *buildEnd();
    void buildPreview(QVBoxLayout *column);
    void buildActs(QVBoxLayout *column);
    void work(); // the days anew
    void showDays();
    void addDay(int index);
    void followChosen();
    void write();
    [[nodiscard]] RepeatChoice choice() const;
    [[nodiscard]] QVector<domain::Instant> chosenStarts() const;
    [[nodiscard]] domain::Outcome<QVector<domain::Instant>> starts(const QString &rule) const;

    PageContext &m_context;
    domain::RecordId m_event;
    QDate m_first;
    QVector<domain::SeriesDay> m_days;
    QVector<QCheckBox *> m_checks; // one a day, null where it cannot be chosen
    QStringList m_lines;
    QComboBox *m_kind = nullptr;
    QLineEdit *m_own = nullptr;
    FieldRow *m_ownRow = nullptr;
    QButtonGroup *m_end = nullptr;
    QSpinBox *m_count = nullptr;
    QDateEdit *m_until = nullptr;
    TextLabel *m_sum = nullptr;
    QVBoxLayout *m_list = nullptr;
    NoticeBar *m_notice = nullptr;
    QPushButton *m_make = nullptr;
};

} // namespace rickyard::views
