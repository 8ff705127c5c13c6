"""Plain data -> PDF: certificates, question papers, class sheets and the other papers of the shop."""
