// One tap a feed: a very large button for one split, keys and buttons for more, the lot it comes
// from, and a weight where the crew weighs.
#pragma once

#include "views/page.h"

#include <QSet>

#include <optional>

class QLineEdit;
class QPushButton;

namespace rickyard::views {

class FieldRow;
class InlineQuestion;
class LotPicker;
class TapButton;
class UnitLineEdit;

class FeedPad : public QWidget
{
    Q_OBJECT

public:
    FeedPad(PageContext &context, domain::RecordId cook, QWidget *parent = nullptr);
    void refresh();
    void chooseLot(domain::RecordId lot);
    [[nodiscard]] domain::RecordId lot() const;
    void setLine(const QString &line); // under the big words
    void focusFeed();
    void feed(int pieces);
    [[nodiscard]] InlineQuestion &ranOut() { return *m_ranOut; }

Q_SIGNALS:
    // Only once the feed is in the file.
    void fed(qint64 feed);
    void refused(const QString &message);
    void lotChanged();

private:
    void build();
    // False: what is typed is no weight; the message stands at the field.
    bool typedWeight(std::optional<domain::Mass> &weight);
    // What the books hold of the chosen lot does not reach for the feed.
    [[nodiscard]] bool wouldRunOut(int pieces, const std::optional<domain::Mass> &weight) const;
    void put(int pieces, const std::optional<domain::Mass> &weight);

    PageContext &m_context;
    domain::RecordId m_cook;
    TapButton *m_one = nullptr;
    QVector<QPushButton *> m_more;
    LotPicker *m_lot = nullptr;
    UnitLineEdit *m_weight = nullptr;
    FieldRow *m_weightRow = nullptr;
    InlineQuestion *m_ranOut = nullptr;
    int m_askedPieces = 0;
    QSet<domain::RecordId> m_countIsOff; // lots that are fed on past their book stock
};

} // namespace rickyard::views
