// Count the ricks: a walk in the order of their places, by keyboard alone, and one press that
// brings the ledger to what was counted.
#pragma once

#include "models/domain/records/books.h"
#include "views/page.h"

#include <QMap>
#include <QTimer>

class QLineEdit;
class QPushButton;
class QScrollArea;
class QVBoxLayout;

namespace rickyard::views {

class Card;
class CountRow;
class NoticeBar;
class TextLabel;

// The lots to walk past: those with wood by the books, or with less than nothing; by place, then
// name, those without a place last.
QVector<domain::RecordId> ricksToCount(const domain::Books &books, domain::Instant now);

class CountSheet : public QWidget
{
    Q_OBJECT

public:
    explicit CountSheet(PageContext &context, QWidget *parent = nullptr);

    // Goes on where it was left: what is typed waits.
    void open();
    // Writes through the verbs, all ricks that were counted in one step. False: messages stand at
    // the fields, and nothing typed is lost.
    bool save();
    [[nodiscard]] QVector<CountRow *> rows() const;
    [[nodiscard]] CountRow *row(domain::RecordId lot) const { return m_rows.value(lot); }
    [[nodiscard]] QString summary() const;

Q_SIGNALS:
    void saved();
    void closed();

private:
    void build();
    QWidget *buildFoot();
    void refresh();
    void sumUp();

    PageContext &m_context;
    QScrollArea *m_scroll = nullptr;
    Card *m_card = nullptr;
    QVBoxLayout *m_column = nullptr;
    TextLabel *m_none = nullptr;
    NoticeBar *m_notice = nullptr;
    TextLabel *m_summary = nullptr;
    QLineEdit *m_note = nullptr;
    QPushButton *m_save = nullptr;
    QMap<domain::RecordId, CountRow *> m_rows;
    QTimer m_soon;
};

} // namespace rickyard::views
