// The head of the Events page: the next event in one large sentence, its cooks, and whether there
// is dry wood for each.
#pragma once

#include "views/page.h"

class QVBoxLayout;

namespace rickyard::views {

class SentenceLabel;

class NextEvent : public QWidget
{
    Q_OBJECT

public:
    explicit NextEvent(PageContext &context, QWidget *parent = nullptr);
    void refresh();
    [[nodiscard]] QString plainText() const;

Q_SIGNALS:
    void opened(const rickyard::domain::Link &link);
    void planAsked(qint64 event);

private:
    void addCook(const domain::PlannedCook &cook);
    void addHint(const QString &text, const QString &button, qint64 event);
    void clear();

    PageContext &m_context;
    SentenceLabel *m_sentence;
    QVBoxLayout *m_cooks;
};

} // namespace rickyard::views
