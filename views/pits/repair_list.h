// Before and after: every mending of a pit with what it did to its fuel.
#pragma once

#include "views/page.h"

class QVBoxLayout;

namespace rickyard::views {

class TextLabel;

class RepairList : public QWidget
{
    Q_OBJECT

public:
    explicit RepairList(PageContext &context, QWidget *parent = nullptr);
    void showPit(domain::RecordId pit);
    [[nodiscard]] QString words() const;

private:
    PageContext &m_context;
    QVBoxLayout *m_lines;
    QVector<TextLabel *> m_shown;
};

} // namespace rickyard::views
