// After one event or cook of a series was changed: only this one, or the later ones too?
#pragma once

#include "views/page.h"

#include <optional>

namespace rickyard::views {

class InlineQuestion;

class LaterQuestion : public QWidget
{
    Q_OBJECT

public:
    explicit LaterQuestion(PageContext &context, QWidget *parent = nullptr);
    // Asks when there is something to change on a later one; else does nothing.
    void askAbout(const std::optional<domain::Row> &before, const domain::Row &after);
    void dismiss();
    [[nodiscard]] QString question() const;

private:
    void changeLater();

    PageContext &m_context;
    std::optional<domain::Row> m_before;
    domain::Row m_after;
    InlineQuestion *m_question;
};

} // namespace rickyard::views
