// The open offers side by side, by the price of their heat: the answer as a sentence, a row an
// offer, and those that cannot be compared with the reason. Reckoned on a thread from a snapshot of
// the books; the last comparison stays until the next is there.
#pragma once

#include "models/domain/wood/offers.h"
#include "views/page.h"

#include <QFutureWatcher>
#include <QTimer>

class QVBoxLayout;

namespace rickyard::views {

class Card;
class SentenceLabel;
class StatusPill;
class TextLabel;

class OfferPanel : public QWidget
{
    Q_OBJECT

public:
    explicit OfferPanel(PageContext &context, QWidget *parent = nullptr);
    ~OfferPanel() override;

    [[nodiscard]] const domain::OfferComparison &comparison() const { return m_comparison; }
    [[nodiscard]] bool current() const { return m_current; } // of the books as they are now
    [[nodiscard]] QString sentence() const;
    void refresh();

Q_SIGNALS:
    void opened(qint64 offer);
    void compared();

private:
    void follow(const workspace::Changes &changes);
    void start();
    void take(const domain::OfferComparison &comparison);
    void showRows();
    void showRefused();
    [[nodiscard]] std::optional<domain::Heat> typicalCook() const;

    PageContext &m_context;
    domain::OfferComparison m_comparison;
    QFutureWatcher<domain::OfferComparison> m_watcher;
    QTimer m_soon; // one comparison for a burst of changes
    std::optional<domain::Heat> m_cookUsed;
    bool m_current = false;
    bool m_again = false;
    Card *m_card;
    StatusPill *m_pill;
    SentenceLabel *m_sentence;
    QVBoxLayout *m_rows;
    QVBoxLayout *m_refused;
    TextLabel *m_method;
};

} // namespace rickyard::views
