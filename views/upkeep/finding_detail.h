// What hangs on a finding: where it came from, what mended it and what that did to the pit's fuel,
// and its photographs.
#pragma once

#include "views/page.h"

class QPushButton;

namespace rickyard::views {

class FlowLayout;
class PhotoStrip;
class TextLabel;

class FindingDetail : public QWidget
{
    Q_OBJECT

public:
    explicit FindingDetail(PageContext &context, QWidget *parent = nullptr);
    void showFinding(domain::RecordId finding);
    void refresh() { showFinding(m_finding); }
    [[nodiscard]] QString words() const;
    [[nodiscard]] PhotoStrip &photos() { return *m_photos; }

private:
    [[nodiscard]] QString originText(const domain::Finding &finding) const;
    [[nodiscard]] QString effectText(const domain::Finding &finding) const;

    PageContext &m_context;
    domain::RecordId m_finding = 0;
    TextLabel *m_origin;
    TextLabel *m_effect;
    QWidget *m_links;
    FlowLayout *m_linkFlow;
    PhotoStrip *m_photos;
};

// The same for a visit: how it went, what was read, its photographs, and the way back to its
// checklist while it is under way.
class VisitDetail : public QWidget
{
    Q_OBJECT

public:
    explicit VisitDetail(PageContext &context, QWidget *parent = nullptr);
    void showVisit(domain::RecordId visit);
    void refresh() { showVisit(m_visit); }
    [[nodiscard]] QString words() const;

Q_SIGNALS:
    void startAsked(qint64 task);

private:
    PageContext &m_context;
    domain::RecordId m_visit = 0;
    TextLabel *m_text;
    QPushButton *m_open;
    PhotoStrip *m_photos;
};

} // namespace rickyard::views
