// What was changed on a cook after its fire was out, latest first: read only, kept by the program.
#pragma once

#include "views/page.h"

#include <QScrollArea>

class QVBoxLayout;

namespace rickyard::views {

class CookChangesPanel : public QScrollArea
{
    Q_OBJECT

public:
    explicit CookChangesPanel(PageContext &context, QWidget *parent = nullptr);
    void setCook(domain::RecordId cook);
    [[nodiscard]] int count() const { return m_count; }

Q_SIGNALS:
    void countChanged(int count);

private:
    void refresh();
    void addChange(const domain::CookChange &change);
    void addWords(const QString &text, bool strong, bool muted);

    PageContext &m_context;
    domain::RecordId m_cook = 0;
    int m_count = 0;
    QVBoxLayout *m_lines;
};

} // namespace rickyard::views
